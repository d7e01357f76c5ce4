import { hasDocument, type Standing } from "@/lib/domain/certificate/standing";

type Props = {
  readonly certificate: { readonly number: string; readonly href: string; readonly standing: Standing };
};

/** The document of a certificate as a file and as a page: while it is being made there is neither, and that is said. */
export function DocumentLinks({ certificate: { number, href, standing } }: Props) {
  if (standing.kind === "pending") return <>{number} (being made, and here in a few minutes)</>;
  if (!hasDocument(standing)) return <>{number} (it ended before its document was made)</>;
  return (
    <>
      <a href={href}>Download {number} (PDF)</a> or <a href={`${href}/html`}>read it as a page</a>
    </>
  );
}
