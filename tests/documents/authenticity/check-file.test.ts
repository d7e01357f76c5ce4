import { createHash } from "node:crypto";
import { PDFDocument } from "pdf-lib";
import { beforeAll, describe, expect, it } from "vitest";
import { checkFile, type Given } from "@/lib/documents/authenticity/check-file";
import type { SealKeyMaterial } from "@/lib/documents/seal/key-material";
import { KeyList, type ListedKey } from "@/lib/domain/seal/key-list";
import { sampleContent } from "../certificate/sample-content";
import {
  containerOf,
  content,
  keyOf,
  listed,
  listOf,
  muchLater,
  sealed,
  sealedOn,
  unsealed,
} from "../seal/sealed";

let key: SealKeyMaterial;
let authority: SealKeyMaterial;
let pdf: Uint8Array;
let good: Uint8Array;
let untimed: Uint8Array;

beforeAll(async () => {
  [key, authority] = [await keyOf("seal"), await keyOf("timestamp")];
  pdf = await unsealed();
  good = await sealed(pdf, key, authority);
  untimed = await sealed(pdf, key, null);
});

const listWith = (seal: Partial<ListedKey> = {}, time: Partial<ListedKey> = {}): KeyList =>
  listOf(listed(key, "seal", seal), listed(authority, "timestamp", time));

const check = (file: Uint8Array, given: Partial<Given> = {}) =>
  checkFile(file, { keys: listWith(), now: sealedOn, ...given });

/** Verdict, indication and the step that speaks. */
const told = async (file: Uint8Array, given: Partial<Given> = {}) => {
  const { verdict, indication, steps, reason } = await check(file, given);
  const speaks = steps.find(({ text }) => text === reason)?.key ?? "all";
  return `${verdict} ${indication} ${speaks}`;
};

const contentHash = createHash("sha256").update(content).digest("hex");
const ascii = (text: string) => new TextEncoder().encode(text);
const appended = (text: string) => Uint8Array.from([...good, ...ascii(text)]);
const passed = "total-passed PASSED all";

describe("a good file", () => {
  it("passes each step, and says what it carries", async () => {
    const verdict = await check(good, { contentHash });
    expect(verdict.steps.filter(({ state }) => state !== "passed")).toEqual([]);
    expect(verdict).toMatchObject({
      ...{ verdict: "total-passed", contentHash, content: sampleContent, sealedAt: sealedOn },
      ...{ timestampedAt: sealedOn, fingerprint: key.facts.fingerprint },
    });
    expect(verdict.reason).toBe(
      "This file is, byte for byte, as Sample laboratory sealed it, by 2026-03-02 09:00 UTC.",
    );
    expect(verdict.attachments.map(({ name, bytes }) => [name, Buffer.from(bytes)])).toEqual([
      ["content.json", Buffer.from(content)],
    ]);
  });

  it("passes without a timestamp while its certificate is in force, and says that the time is not attested", async () => {
    expect(await told(untimed)).toBe(passed);
    expect((await check(untimed)).steps.find(({ key: step }) => step === "timestamp")?.state).toBe("unknown");
  });

  it("is held against a list that is checked itself", () => {
    expect(KeyList.safeParse(listWith()).success).toBe(true);
    const ending = { kind: "lost", reason: "x", effectiveAt: sealedOn.toISOString() };
    expect(KeyList.safeParse({ ...listWith(), keys: [{ ...listed(key, "seal"), ending }] }).success).toBe(
      false,
    );
  });
});

describe("a file that was changed", () => {
  it("is found out at any byte outside the container, by its digest or before", async () => {
    const { from, to } = containerOf(good);
    const places = Array.from({ length: 60 }, (_, at) => Math.floor(((good.length - 1) * at) / 59));
    for (const place of places.filter((at) => at < from || at >= to)) {
      const {
        verdict,
        content: shown,
        attachments,
      } = await check(good.map((byte, at) => (at === place ? byte ^ 4 : byte)));
      expect([place, verdict, shown, attachments.length]).toEqual([place, "total-failed", null, 0]);
    }
  });

  it("is found out at any byte of the container too: certificate, signature, timestamp or padding", async () => {
    const { from, to } = containerOf(good);
    for (let place = from; place < to; place += 53) {
      // One step further in hexadecimal, or the other case of a letter: what a reader would not mind.
      const changed = (byte: number) => (/[a-f]/.test(String.fromCharCode(byte)) ? byte - 32 : byte ^ 1);
      const { verdict } = await check(good.map((byte, at) => (at === place ? changed(byte) : byte)));
      expect([place, verdict]).toEqual([place, "total-failed"]);
    }
  });

  const second = async () => {
    const text = Buffer.from(good).toString("latin1");
    const start = /startxref\s+(\d+)/.exec(text)?.[1];
    const object = `\n999 0 obj\n<< /Type /Page >>\nendobj\nxref\n999 1\n${String(good.length + 1).padStart(10, "0")} 00000 n \n`;
    return appended(
      `${object}trailer\n<< /Size 1000 /Root 1 0 R /Prev ${start} >>\nstartxref\n${good.length + 50}\n%%EOF\n`,
    );
  };
  const hole = () => {
    // The range is written anew so that it leaves out a part of the page, and is as long as it was.
    const { from, to } = containerOf(good);
    const said = `[ 0 ${from} ${to} ${good.length - to} ]`;
    const less = `[ 0 ${from - 200} ${to} ${good.length - to} ]`.padEnd(said.length);
    return Buffer.from(Buffer.from(good).toString("latin1").replace(said, less), "latin1");
  };
  const beside = () => {
    // The range begins late: what stands before it could be anything.
    const said = /\/ByteRange \[ 0/;
    return Buffer.from(Buffer.from(good).toString("latin1").replace(said, "/ByteRange [ 9"), "latin1");
  };
  const inHole = () => {
    const { from } = containerOf(good);
    return Buffer.concat([good.subarray(0, from + 1), ascii("(a text)"), good.subarray(from + 9)]);
  };
  const resaved = async () =>
    (await PDFDocument.load(good, { updateMetadata: false })).save({ useObjectStreams: false });
  const twice = async () => {
    const { from, to } = containerOf(good);
    return appended(`\n/ByteRange [ 0 ${from} ${to} ${good.length - to} ] %%EOF`);
  };

  it.each([
    [
      "a byte of the page flipped",
      () => good.map((byte, at) => (at === 300 ? byte ^ 1 : byte)),
      "HASH_FAILURE digest",
    ],
    ["bytes appended", () => appended("\n%%EOF\n"), "FORMAT_FAILURE coverage"],
    ["one blank appended", () => appended(" "), "FORMAT_FAILURE coverage"],
    ["a second revision", second, "FORMAT_FAILURE coverage"],
    ["a second signature", twice, "FORMAT_FAILURE one-seal"],
    ["a range that leaves a hole", hole, "FORMAT_FAILURE coverage"],
    ["a range that begins late", beside, "FORMAT_FAILURE coverage"],
    ["something else in place of the container", inHole, "FORMAT_FAILURE coverage"],
    ["cut short", () => good.subarray(0, good.length - 300), "FORMAT_FAILURE coverage"],
    ["cut before its seal", () => good.subarray(0, 400), "NO_SEAL one-seal"],
    ["saved anew by a program", resaved, "FORMAT_FAILURE coverage"],
    ["another's content put in, unsealed", () => unsealed(ascii("{}")), "NO_SEAL one-seal"],
    ["no PDF", () => ascii("<html>"), "FORMAT_FAILURE pdf"],
    ["nothing", () => new Uint8Array(), "FORMAT_FAILURE pdf"],
    ["a PDF's first bytes alone", () => ascii("%PDF-1.7"), "NO_SEAL one-seal"],
  ])("%s", async (_, file, expected) => {
    const { steps, reason, attachments } = await check(await file());
    expect(await told(await file())).toBe(`total-failed ${expected}`);
    expect(attachments).toEqual([]);
    expect(steps).toHaveLength(11);
    expect(reason).toMatch(/\.$/);
  });

  it.each([
    ['<?xml version="1.0" encoding="UTF-8"?><dcc:digitalCalibrationCertificate/>'],
    ['\ufeff<?xml version="1.0"?><a/>'],
    ['\n<dcc:digitalCalibrationCertificate schemaVersion="3.3.0">'],
  ])("is not condemned where it is the data beside the PDF: %s", async (text) => {
    expect(await told(ascii(text))).toBe("indeterminate NOT_THE_PDF pdf");
  });

  it("never throws, whatever stands in the container", async () => {
    const { from, to } = containerOf(good);
    for (const start of ["30", "3003020101", "308006092a864886f70d010702", "3082ffff", ""]) {
      const digits = start.padEnd(to - from - 2, "0");
      const file = Buffer.concat([good.subarray(0, from + 1), ascii(digits), good.subarray(to - 1)]);
      expect((await check(file)).verdict).toBe("total-failed");
    }
  });
});

describe("whose it is, and when", () => {
  const before = new Date(sealedOn.getTime() - 1000).toISOString();
  const after = new Date(sealedOn.getTime() + 1000).toISOString();
  const revoked = (effectiveAt: string) => ({
    ending: { kind: "revoked", reason: "The file was lost", effectiveAt } as const,
  });
  const retired = (effectiveAt: string) => ({
    ending: { kind: "retired", reason: "Renewed", effectiveAt } as const,
  });
  const noAuthority = () => listOf(listed(key, "seal"));

  it.each<[string, () => Uint8Array, () => Partial<Given>, string]>([
    ["expired since, and timestamped before", () => good, () => ({ now: muchLater }), passed],
    ["expired, and no timestamp", () => untimed, () => ({ now: muchLater }), "indeterminate NO_POE validity"],
    [
      "expired, and timestamped by an authority that is not known",
      () => good,
      () => ({ now: muchLater, keys: noAuthority() }),
      "indeterminate NO_POE validity",
    ],
    ["timestamped by an unknown authority, in force", () => good, () => ({ keys: noAuthority() }), passed],
    ["revoked after it was sealed", () => good, () => ({ keys: listWith(revoked(after)) }), passed],
    [
      "revoked before it was sealed",
      () => good,
      () => ({ keys: listWith(revoked(before)) }),
      "total-failed REVOKED revocation",
    ],
    [
      "revoked at the very second",
      () => good,
      () => ({ keys: listWith(revoked(sealedOn.toISOString())) }),
      "total-failed REVOKED revocation",
    ],
    [
      "revoked later, and no timestamp",
      () => untimed,
      () => ({ keys: listWith(revoked(after)) }),
      "indeterminate NO_POE revocation",
    ],
    [
      "revoked later, and the authority revoked too",
      () => good,
      () => ({ keys: listWith(revoked(after), revoked(before)) }),
      "indeterminate NO_POE revocation",
    ],
    ["retired since", () => good, () => ({ keys: listWith(retired(after)) }), passed],
    [
      "sealed after the key was retired",
      () => good,
      () => ({ keys: listWith(retired(before)) }),
      "indeterminate SIG_CONSTRAINTS_FAILURE revocation",
    ],
    [
      "a key that is on no list",
      () => good,
      () => ({ keys: listOf(listed(authority, "timestamp")) }),
      "indeterminate NO_SIGNING_CERTIFICATE_FOUND issuer",
    ],
    [
      "the authority's key in place of the seal's",
      () => good,
      () => ({ keys: listOf(listed(key, "timestamp"), listed(authority, "timestamp")) }),
      "indeterminate NO_SIGNING_CERTIFICATE_FOUND issuer",
    ],
    [
      "another document than the paper's",
      () => good,
      () => ({ contentHash: "0".repeat(64) }),
      "total-failed OTHER_DOCUMENT content",
    ],
  ])("%s", async (_, file, given, expected) => {
    expect(await told(file(), given())).toBe(expected);
  });

  it("says the fingerprint of a key that is not known, to be compared", async () => {
    const { reason } = await check(good, { keys: listOf() });
    expect(reason).toContain(key.facts.fingerprint);
  });

  it("is sealed by a key that had ended, or had not begun", async () => {
    const late = await keyOf("timestamp", muchLater);
    const keys = listOf(listed(key, "seal"), listed(late, "timestamp"));
    expect(await told(await sealed(pdf, key, late, muchLater), { keys, now: muchLater })).toBe(
      "total-failed EXPIRED validity",
    );
    const early = new Date("2026-01-01T00:00:00Z");
    const earlier = await keyOf("timestamp", early);
    const list = listOf(listed(key, "seal"), listed(earlier, "timestamp"));
    expect(await told(await sealed(pdf, key, earlier, early), { keys: list })).toBe(
      "total-failed NOT_YET_VALID validity",
    );
  });

  it("is sealed by another key under the same name", async () => {
    const file = await sealed(pdf, await keyOf("seal"), authority);
    expect(await told(file)).toBe("indeterminate NO_SIGNING_CERTIFICATE_FOUND issuer");
  });

  it("a whole document whose content is another's is told by the hash on the paper", async () => {
    const swapped = await sealed(await unsealed(ascii('{"another":"document"}')), key, authority);
    expect(await told(swapped, { contentHash })).toBe("total-failed OTHER_DOCUMENT content");
    expect((await check(swapped)).content).toBeNull();
  });

  it("carries no content to be compared", async () => {
    const bare = await PDFDocument.create();
    bare.addPage();
    const file = await sealed(await bare.save(), key, authority);
    expect(await told(file)).toBe(passed);
    expect(await told(file, { contentHash })).toBe("indeterminate CONTENT_MISMATCH content");
  });
});
