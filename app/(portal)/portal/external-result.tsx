import type { externalOf } from "@/lib/views/portal/external-result";

/** What another laboratory measured, by its own certificate: named so that nobody takes it for ours. */
export function ExternalResult({
  external,
}: {
  readonly external: NonNullable<ReturnType<typeof externalOf>>;
}) {
  return (
    <div>
      <strong>{external.said}.</strong> Their certificate {external.certificate} of {external.issuedOn}
      {external.accreditation ? `, accreditation as they state it: ${external.accreditation}` : ""}:{" "}
      <a href={external.href}>Download their certificate {external.certificate} (PDF)</a>.
      {external.correction ? ` It takes the place of an earlier one: ${external.correction}` : ""}
      <ul className="plain-list">
        {external.lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </div>
  );
}
