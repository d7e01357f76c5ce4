import { readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { checkFile } from "@/lib/documents/authenticity/check-file";
import { attributeOf, readCms } from "@/lib/documents/authenticity/cms";
import { oid } from "@/lib/documents/authenticity/identifiers";
import type { SealKeyMaterial } from "@/lib/documents/seal/key-material";
import { readKey } from "@/lib/documents/seal/read-key";
import {
  hasOpenssl,
  hasPdfsig,
  openssl,
  pdfsig,
  withoutOpenssl,
  withoutPdfsig,
} from "../../support/outside-tools";
import { temporaryFolder } from "../../support/temporary-folder";
import { keyOf, listed, listOf, partsOf, pem, sealed, unsealed } from "./sealed";

const folder = temporaryFolder();
const inFolder = (name: string) => path.join(folder, name);

const subject = "/CN=A laboratory of the tests";
const makers: Readonly<Record<string, readonly string[]>> = {
  "RSA 3072": ["-newkey", "rsa:3072"],
  "ECDSA P-256": ["-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:P-256"],
};

/** A key as a site would bring it: made and packed by openssl. */
const broughtKey = async (family: string): Promise<SealKeyMaterial> => {
  const made = ["-nodes", "-keyout", "key.pem", "-out", "certificate.pem", "-days", "365", "-subj", subject];
  openssl(folder, "req", "-x509", ...(makers[family] ?? []), ...made);
  const packed = [
    "-inkey",
    "key.pem",
    "-in",
    "certificate.pem",
    "-out",
    "key.p12",
    "-passout",
    "pass:a word",
  ];
  openssl(folder, "pkcs12", "-export", ...packed);
  return readKey(readFileSync(inFolder("key.p12")), "a word");
};

describe.skipIf(!hasOpenssl)(
  `sealed with keys that openssl made${hasOpenssl ? "" : `: ${withoutOpenssl}`}`,
  () => {
    let authority: SealKeyMaterial;
    let pdf: Uint8Array;
    // A key that openssl makes is in force from the second in which it is made.
    const now = new Date(Date.now() + 60_000);

    beforeAll(async () => {
      authority = await keyOf("timestamp", now);
      pdf = await unsealed();
      writeFileSync(inFolder("authority.pem"), pem(authority.certificate));
    });

    describe.each(Object.keys(makers))("%s", (family) => {
      let key: SealKeyMaterial;
      let file: Uint8Array;
      beforeAll(async () => {
        key = await broughtKey(family);
        file = await sealed(pdf, key, authority, now);
        writeFileSync(inFolder("a.pdf"), file);
      });

      it("is what openssl made", () => {
        expect(key.facts).toMatchObject({ algorithm: family, subject: "CN=A laboratory of the tests" });
        const said = openssl(folder, "x509", "-in", "certificate.pem", "-noout", "-fingerprint", "-sha256");
        expect(said.replaceAll(":", "").toLowerCase()).toContain(key.facts.fingerprint);
      });

      it.skipIf(!hasPdfsig)(
        `is valid to pdfsig, over the whole file${hasPdfsig ? "" : `: ${withoutPdfsig}`}`,
        () => {
          const said = pdfsig(inFolder("a.pdf"));
          expect(said).toContain("Signature Type: ETSI.CAdES.detached");
          expect(said).toContain("Signature is Valid.");
          expect(said).toContain("Total document signed");
          expect(said).not.toContain("Signature #2");
        },
      );

      it("is valid to openssl as CAdES, and so is its timestamp", () => {
        const { cms, covered } = partsOf(file);
        writeFileSync(inFolder("cms.der"), cms);
        writeFileSync(inFolder("covered"), covered);
        const trusted = ["-CAfile", "certificate.pem", "-purpose", "any", "-out", "/dev/null"];
        openssl(
          folder,
          ...[
            "cms",
            "-verify",
            "-cades",
            "-binary",
            "-inform",
            "DER",
            "-in",
            "cms.der",
            "-content",
            "covered",
          ],
          ...trusted,
        );
        const read = readCms(cms, "the seal");
        writeFileSync(inFolder("signature"), read.signature);
        writeFileSync(
          inFolder("token.der"),
          attributeOf(read.unsignedAttributes, oid.timestampToken) ?? Buffer.of(),
        );
        const stamped = ["-in", "token.der", "-token_in", "-data", "signature", "-CAfile", "authority.pem"];
        expect(openssl(folder, "ts", "-verify", ...stamped)).toContain("Verification: OK");
        // ETSI EN 319 142-1: the signing time stands in the PDF's dictionary and not among the signed attributes.
        expect(read.signedAttributes.map(({ type }) => type)).not.toContain("1.2.840.113549.1.9.5");
      });

      it("is valid to us", async () => {
        const keys = listOf(listed(key, "seal", { origin: "file" }), listed(authority, "timestamp"));
        const verdict = await checkFile(file, { keys, now });
        expect(verdict).toMatchObject({ verdict: "total-passed", fingerprint: key.facts.fingerprint });
        expect(verdict.timestampedAt?.getTime()).toBe(1000 * Math.floor(now.getTime() / 1000));
      });
    });
  },
);
