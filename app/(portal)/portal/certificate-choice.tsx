import { AskAgain } from "@/app/_ui/ask-again.client";
import { Button } from "@/app/_ui/button";
import { EmptyState } from "@/app/_ui/empty-state";
import { EndedNote } from "@/app/_ui/ended-note";
import { FieldGroup } from "@/app/_ui/field-group";
import { StandingMark } from "@/app/_ui/standing-mark";
import { TypeLetter } from "@/app/_ui/type-letter";
import { andMore } from "@/lib/domain/certificate/items-beside";
import { hasDocument } from "@/lib/domain/certificate/standing";
import type { PortalCertificate } from "@/lib/views/portal-certificates";

/** More at once would be a long wait on a telephone. */
const tickedAtFirst = 50;

/** In plain words, only where there is something to say. */
function CertificateStanding({ certificate }: { readonly certificate: PortalCertificate }) {
  const { follows, number, standing } = certificate;
  return (
    <>
      <EndedNote number={number} standing={standing} />
      {standing.kind === "pending" ? (
        <>
          <StandingMark standing={standing} /> Its document is being made and is here in a few minutes.{" "}
        </>
      ) : null}
      {follows === null ? null : `It counts instead of ${follows}. `}
    </>
  );
}

/** Certificates to fetch one by one, or the ticked ones together. A plain form: it works without scripts. */
export function CertificateChoice({ certificates }: { readonly certificates: readonly PortalCertificate[] }) {
  if (certificates.length === 0)
    return (
      <EmptyState title="No certificate yet">
        A certificate is here as soon as it is signed. You can fetch it as often as you like.
      </EmptyState>
    );
  return (
    <form className="stack" action="/api/certificates/zip" method="post">
      {certificates.some(({ standing }) => standing.kind === "pending") ? <AskAgain /> : null}
      <FieldGroup legend="Certificates" hint="Tick what you want together, or take one by one.">
        <ul className="stack plain-list">
          {certificates.map((certificate, index) => (
            <li key={certificate.number} className="check">
              <input
                type="checkbox"
                id={`choose-${certificate.number}`}
                name="token"
                value={certificate.token}
                disabled={!hasDocument(certificate.standing)}
                defaultChecked={index < tickedAtFirst && certificate.standing.kind === "valid"}
              />
              <label htmlFor={`choose-${certificate.number}`}>
                {certificate.number}: sensor {andMore(certificate.serial, certificate.others)}{" "}
                <TypeLetter letter={certificate.typeLetter} />
              </label>
              <div className="field-hint">
                {certificate.from} to {certificate.to}, issued {certificate.issuedOn}, order{" "}
                {certificate.order}
                {certificate.purchaseOrder ? ` (${certificate.purchaseOrder})` : ""}.{" "}
                <CertificateStanding certificate={certificate} />
                {hasDocument(certificate.standing) ? (
                  <>
                    <a href={certificate.href}>Download {certificate.number} (PDF)</a>,{" "}
                    <a href={`${certificate.href}/dcc`}>its data (DCC, XML)</a>,{" "}
                    <a href={`${certificate.href}/html`}>read it as a page</a>,{" "}
                  </>
                ) : null}
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
