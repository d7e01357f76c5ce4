import Link from "next/link";
import { Hash } from "@/app/_ui/hash";
import type { CalibrationView } from "@/lib/views/calibration";

const words: Readonly<Record<string, string>> = {
  "application/pdf": "PDF",
  "application/xml": "XML",
  "image/png": "image",
  "image/jpeg": "image",
};

/** The certificate's file with its hash; of our own certificate, its page. */
export function DocumentLink({ view }: { readonly view: CalibrationView }) {
  const { document, ownCertificate } = view;
  if (ownCertificate)
    return (
      <Link href={`/certificates/${ownCertificate.number}`}>Our own certificate {ownCertificate.number}</Link>
    );
  if (!document) return <span className="quiet">none kept</span>;
  return (
    <>
      <a href={`/api/documents/${document.id}`} download>
        {document.fileName}
      </a>{" "}
      ({words[document.mediaType] ?? document.mediaType}) <Hash value={document.sha256} label="SHA-256" />
    </>
  );
}
