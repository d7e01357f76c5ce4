import { EmptyState } from "@/app/_ui/empty-state";
import { LinkButton } from "@/app/_ui/link-button";
import type { CertificateQuery } from "@/lib/domain/certificate/list-query";
import { isNarrowed } from "@/lib/domain/list/narrowed";
import { addressOf } from "@/lib/domain/list/query";
import { isShortWord } from "@/lib/domain/list/short-word";

const titleOf = ({ only, q }: CertificateQuery, narrowed: boolean): string => {
  if (q) return `No certificate matches “${q}”`;
  if (only === "pending") return "No document is pending";
  return narrowed ? "No certificate is left by these filters" : "No certificate yet";
};

const howTheyAreFound =
  "Certificates, tags and orders are looked for by the beginning of their number, a customer by any part of the name, a serial by any three characters or more of it.";
const shortRule = " Of a serial, one or two characters are looked for at its beginning and end alone.";

/** Says what was looked for and found no certificate, and leads to where there are more. */
export function NoCertificates({ query }: { readonly query: CertificateQuery }) {
  const narrowed = isNarrowed(query);
  const others = isNarrowed({ ...query, q: undefined });
  return (
    <EmptyState
      title={titleOf(query, narrowed)}
      action={
        narrowed ? (
          <div className="row">
            {query.q && others ? (
              <LinkButton href={addressOf("/certificates", { q: query.q })}>
                Look among all certificates
              </LinkButton>
            ) : null}
            <LinkButton href="/certificates">Show all certificates</LinkButton>
          </div>
        ) : null
      }
    >
      {query.q ? howTheyAreFound : null}
      {query.q && isShortWord(query.q) ? shortRule : null}
      {narrowed ? null : "A certificate comes here when a signatory signs off a result under Review."}
    </EmptyState>
  );
}
