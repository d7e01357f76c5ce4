import { FieldList } from "@/app/_ui/field-list";
import { Hash } from "@/app/_ui/hash";
import { Section } from "@/app/_ui/section";
import { Timestamp } from "@/app/_ui/timestamp";
import type { CertificatePage } from "@/lib/views/certificate-page";

/** By whom, when, and the hashes by which it is known again. */
export function IssueSection({ page }: { readonly page: CertificatePage }) {
  const { content, file } = page;
  return (
    <Section title="Issue">
      <FieldList
        items={[
          {
            label: "Signed off",
            value: (
              <>
                {content.authorisedBy.name}, <Timestamp at={page.signedAt} precision="minute" />
              </>
            ),
          },
          { label: "Measured by", value: content.performedBy },
          { label: "Performed", value: `${content.performedFrom} to ${content.performedTo}` },
          ...(page.signature
            ? [
                {
                  label: "Hash that was signed for",
                  value: (
                    <>
                      <Hash value={page.signature.reviewedHash} label="Hash that was signed for" />{" "}
                      <span className="quiet">
                        as on the signatory’s screen; number, day and signature were added then
                      </span>
                    </>
                  ),
                },
              ]
            : []),
          { label: "Content hash", value: <Hash value={page.contentHash} label="Content hash" /> },
          {
            label: "Document hash",
            value: file ? <Hash value={file.sha256} label="Document hash" /> : "being made",
          },
          ...(file?.sealFingerprint
            ? [{ label: "Sealed with", value: <Hash value={file.sealFingerprint} label="Key" /> }]
            : []),
        ]}
      />
    </Section>
  );
}
