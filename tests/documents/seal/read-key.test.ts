import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { makeKey } from "@/lib/documents/seal/make-key";
import { readKey } from "@/lib/documents/seal/read-key";
import { issueKey, packKey } from "../../support/issued-key";
import { hasOpenssl, openssl, withoutOpenssl } from "../../support/outside-tools";
import { temporaryFolder } from "../../support/temporary-folder";
import { sealedOn } from "./sealed";

const own = { purpose: "seal", name: "Sample laboratory", at: sealedOn, passphrase: "p" } as const;

describe("a key of the laboratory's own", () => {
  it("is ECDSA P-256 in the laboratory's name, for three years, and opens with its passphrase alone", async () => {
    const file = await makeKey(own);
    const { facts, family, privateKey } = await readKey(file, "p");
    expect(facts).toMatchObject({
      algorithm: "ECDSA P-256",
      subject: "CN=Sample laboratory",
      isSelfIssued: true,
    });
    expect(facts.notAfter.toISOString()).toBe("2029-03-02T09:00:00.000Z");
    // An outside clock that is a little behind does not find a seal older than its key.
    expect(facts.notBefore.getTime()).toBeLessThan(sealedOn.getTime());
    expect([family, privateKey.extractable]).toEqual(["ECDSA", false]);
    await expect(readKey(file, "q")).rejects.toThrow("SEAL_KEY_PASSPHRASE");
  });

  it("is another one each time, and its name fits into a certificate", async () => {
    const long = { ...own, name: "Ü".repeat(100), purpose: "timestamp" } as const;
    const [one, other] = [await readKey(await makeKey(long), "p"), await readKey(await makeKey(long), "p")];
    expect(one.facts.fingerprint).not.toBe(other.facts.fingerprint);
    expect(one.facts.subject).toBe(`CN=${"Ü".repeat(57)} (time)`);
  });
});

describe("a file that is none", () => {
  it.each([
    ["text", new TextEncoder().encode("no key"), "p"],
    ["nothing", new Uint8Array(), "p"],
  ])("%s is refused with the remedy", async (_, file, passphrase) => {
    await expect(readKey(file, passphrase)).rejects.toThrow("openssl pkcs12 -export");
  });

  it("and so is a passphrase that writers of such files spell in different ways", async () => {
    await expect(readKey(await makeKey(own), "pä")).rejects.toThrow("English keyboard");
  });
});

describe.skipIf(!hasOpenssl)(`files of openssl${hasOpenssl ? "" : `: ${withoutOpenssl}`}`, () => {
  const folder = temporaryFolder();
  const call = (...args: string[]) => openssl(folder, ...args);
  const read = (name: string) => readKey(readFileSync(path.join(folder, name)), "a word");
  const request = (kind: string, name: string, ...rest: string[]) =>
    call(
      "req",
      "-newkey",
      ...kind.split(" "),
      "-nodes",
      "-keyout",
      `${name}.key`,
      "-subj",
      `/CN=${name}`,
      ...rest,
    );
  const pack = (name: string, ...rest: string[]) =>
    call(
      "pkcs12",
      "-export",
      "-inkey",
      `${name}.key`,
      "-in",
      `${name}.pem`,
      "-passout",
      "pass:a word",
      ...rest,
    );
  const p256 = "ec -pkeyopt ec_paramgen_curve:P-256";

  it("brings the certificates above it, nearest first, without the root", async () => {
    issueKey(folder);
    packKey(folder, "leaf.p12", ["root.pem", "middle.pem"], "a word");
    const { facts, chain } = await read("leaf.p12");
    expect([facts.subject, facts.isSelfIssued]).toEqual(["CN=leaf", false]);
    const middle = call("x509", "-in", "middle.pem").replace(/-----[A-Z ]+-----|\s/g, "");
    expect(chain.map((one) => Buffer.from(one).toString("base64"))).toEqual([middle]);
  });

  it("refuses the ciphers of old files with the commands that write them anew", async () => {
    request(p256, "old", "-x509", "-out", "old.pem", "-days", "30");
    pack("old", "-legacy", "-out", "old.p12");
    await expect(read("old.p12")).rejects.toThrow("openssl pkcs12 -legacy -in OLD.p12");
  });

  it("refuses a key without its certificate, and RSA that is too short to last", async () => {
    request(p256, "one", "-x509", "-out", "one.pem", "-days", "30");
    call("pkcs12", "-export", "-nocerts", "-inkey", "one.key", "-out", "bare.p12", "-passout", "pass:a word");
    await expect(read("bare.p12")).rejects.toThrow("holds no certificate of that key");
    request("rsa:2048", "short", "-x509", "-out", "short.pem", "-days", "30");
    pack("short", "-out", "short.p12");
    await expect(read("short.p12")).rejects.toThrow("2048 bits is too short");
  });
});
