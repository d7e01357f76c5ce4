import { Disclosure } from "@/app/_ui/disclosure";
import { LinkButton } from "@/app/_ui/link-button";
import { Notice } from "@/app/_ui/notice";
import type { DigitalView } from "@/lib/views/calibration-form";

type Props = { readonly digital: DigitalView; readonly here: string };

/** What a person must know of the file before confirming: how it was checked, what was not understood, which table. */
export function DigitalNotice({ digital, here }: Props) {
  const { isCheckedBySchema, schemaVersion, hasSignature, remarks, reasons, setAside, offers } = digital;
  return (
    <Notice kind="info" title={`Note: read from ${digital.fileName}`}>
      <ul>
        <li>
          {isCheckedBySchema
            ? `Held against the published schema ${schemaVersion} and our own rules.`
            : `Held against our own rules only: the published schema ${schemaVersion} is not set up on this server.`}
        </li>
        <li>
          {hasSignature
            ? "It says that it is signed. The signature was not verified."
            : "It bears no signature: make sure where it came from."}
        </li>
        {[...remarks, ...reasons.map(({ message }) => message)].map((remark) => (
          <li key={remark}>{remark}</li>
        ))}
      </ul>
      {setAside.length > 0 ? (
        <Disclosure summary="Parts of the file that were seen and not interpreted">
          <ul>
            {setAside.map(({ what, place }) => (
              <li key={`${place.path} ${place.line}`}>
                {what}, line {place.line}
              </li>
            ))}
          </ul>
        </Disclosure>
      ) : null}
      {offers.length > 1
        ? offers.map((title, index) =>
            index === digital.offer ? null : (
              <LinkButton
                key={title}
                href={`${here}/calibrations/new?document=${digital.documentId}&offer=${index}`}
              >
                {`Take the table “${title}” instead`}
              </LinkButton>
            ),
          )
        : null}
    </Notice>
  );
}
