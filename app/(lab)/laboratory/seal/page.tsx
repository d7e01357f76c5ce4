import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { sealKeysPageView } from "@/lib/views/seal/keys";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { KeyTable } from "./key-table";

export const metadata = { title: "Seal" };

export default async function SealPage() {
  const actor = await requirePermission("seal.manage");
  const { keys, inUse } = await load(sealKeysPageView(actor, new Date()));
  return (
    <Page
      title="Seal"
      crumbs={<Breadcrumb trail={[{ label: "Laboratory", href: "/laboratory" }]} />}
      lead={
        <>
          Each certificate is sealed by a key, so that anyone can see that not one byte of it was changed. The
          keys themselves lie in files outside the database; here are their certificates, which{" "}
          <a href="/.well-known/seal-keys.json">everybody can read</a>.
        </>
      }
    >
      {inUse?.state.kind === "ends-soon" ? (
        <Notice kind="info" title={`The key ends in ${inUse.state.days} days`}>
          {inUse.origin === "self-issued"
            ? "Start again: the laboratory makes itself another key, and this one is retired."
            : "Get another certificate, name its file in SEAL_KEY_FILE and start again; this key is then retired."}{" "}
          What it has sealed stays good.
        </Notice>
      ) : null}
      {inUse?.origin === "self-issued" ? (
        <Notice kind="info" title="The key in use is self-issued">
          It shows that a certificate was not changed since this key sealed it. That the key is this
          laboratory’s, only the laboratory itself says: readers of PDF files will call its issuer unknown.
          Tell customers its fingerprint by another way than this platform, or bring a certificate for sealing
          documents from somebody they trust, as a PKCS #12 file named in SEAL_KEY_FILE.
        </Notice>
      ) : null}
      <Section title="Keys" wide>
        <KeyTable keys={keys} />
      </Section>
    </Page>
  );
}
