import { Button } from "@/app/_ui/button";
import { EmptyState } from "@/app/_ui/empty-state";
import { FieldGroup } from "@/app/_ui/field-group";
import { TypeLetter } from "@/app/_ui/type-letter";
import type { PortalCertificate } from "@/lib/views/portal-certificates";

/** More at once would be a long wait on a telephone. */
const tickedAtFirst = 50;

/** Certificates to fetch one by one, or the ticked ones together. A plain form: it works without scripts. */
export function CertificateChoice({ certificates }: { readonly certificates: readonly PortalCertificate[] }) {
  if (certificates.length === 0)
    return (
      <EmptyState title="No certificate yet">
        A certificate is here as soon as it is signed. You can fetch it as often as you like.
      </EmptyState>
    );
  return (
    <form action="/api/certificates/zip" method="post">
      <FieldGroup legend="Certificates" hint="Tick what you want together, or take one by one.">
        <ul className="stack plain-list">
          {certificates.map((certificate, index) => (
            <li key={certificate.number} className="check">
              <input
                type="checkbox"
                id={`choose-${certificate.number}`}
                name="token"
                value={certificate.token}
                defaultChecked={index < tickedAtFirst}
              />
              <label htmlFor={`choose-${certificate.number}`}>
                {certificate.number}: sensor {certificate.serial}{" "}
                <TypeLetter letter={certificate.typeLetter} />
              </label>
              <div className="field-hint">
                {certificate.from} to {certificate.to}, issued {certificate.issuedOn}, order{" "}
                {certificate.order}
                {certificate.purchaseOrder ? ` (${certificate.purchaseOrder})` : ""}.{" "}
                <a href={certificate.href}>Download {certificate.number} (PDF)</a>,{" "}
                <a href={`${certificate.href}/html`}>read it as a page</a>,{" "}
                <a href={`${certificate.href}/dcc`} download>
                  for machines (DCC, XML)
                </a>
                ,{" "}
                <a href={`${certificate.href}/evidence`} download>
                  its evidence (JSON)
                </a>
              </div>
            </li>
          ))}
        </ul>
      </FieldGroup>
      {certificates.length > 1 ? (
        <div className="form-actions">
          <Button kind="primary" type="submit">
            Download the ticked ones together
          </Button>
        </div>
      ) : null}
    </form>
  );
}
