import { createHash } from "node:crypto";
import { beforeAll, describe, expect, it } from "vitest";
import { checkFile } from "@/lib/documents/authenticity/check-file";
import type { Around } from "@/lib/documents/authenticity/ruling";
import { verdictWords } from "@/lib/documents/authenticity/verdict-words";
import { type WholeVerdict, wholeVerdict } from "@/lib/documents/authenticity/whole-verdict";
import { readPaperHash } from "@/lib/domain/authenticity/paper-hash";
import type { PublicStatus } from "@/lib/domain/authenticity/public-status";
import { readTypedHash } from "@/lib/domain/authenticity/typed-hash";
import {
  makeKeys,
  sampleContentAt,
  sampleHost,
  sampleLog,
  sampleToken,
  sealedOn,
  sealedSample,
} from "./sealed-sample";

type Sample = Awaited<ReturnType<typeof sealedSample>>;

let keys: Awaited<ReturnType<typeof makeKeys>>;
let sample: Sample;
let other: Sample;

const otherToken = "other-token-".padEnd(43, "0");
const number = sampleContentAt(sampleToken).number;

beforeAll(async () => {
  keys = await makeKeys();
  sample = await sealedSample(keys, sampleContentAt(sampleToken));
  other = await sealedSample(keys, { ...sampleContentAt(otherToken), number: "C-OTHER" });
});

const sha256 = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

const statusOf = (changed: Partial<PublicStatus> = {}): PublicStatus => ({
  ...{ standing: "valid", laboratory: "Sample laboratory", number, issuedOn: "2026-03-02", serialEnd: "" },
  ...{ endedOn: "", successor: null, predecessor: null, fileSha256: sha256(sample.file), contentProof: "" },
  logHash: sampleLog.hash,
  ...changed,
});

const judge = async (
  file: Uint8Array,
  around: Partial<Around> = {},
  now = sealedOn,
): Promise<WholeVerdict> => {
  const list = around.keys ?? keys.list;
  return wholeVerdict(await checkFile(file, { keys: list, now }), {
    ...{ fileSha256: sha256(file), paperHash: readPaperHash(sample.contentHash), token: sampleToken },
    ...{ host: sampleHost, status: statusOf(), keys: list },
    ...around,
  });
};

const stateOf = (whole: WholeVerdict, key: string) => whole.checks.find((check) => check.key === key)?.state;

describe("a good file", () => {
  it("is genuine, unchanged and in force, and its own key is to be compared", async () => {
    const whole = await judge(sample.file);
    expect(whole).toMatchObject({ kind: "good", title: "Genuine, unchanged and in force" });
    expect(whole.reason).toContain("compare its fingerprint");
    expect(whole.sealKey?.fingerprint).toBe(keys.seal.facts.fingerprint);
    expect(whole.checks.filter(({ state }) => state !== "passed")).toEqual([]);
    expect(whole.checks.every(({ label, text }) => label !== "" && text !== "")).toBe(true);
  });

  it("is genuine offline too, where its standing cannot be known", async () => {
    const whole = await judge(sample.file, { host: null, status: null, token: null });
    expect(whole).toMatchObject({ kind: "good", title: "Genuine and unchanged" });
    expect(stateOf(whole, "standing")).toBe("unknown");
    expect(stateOf(whole, "host")).toBeUndefined();
  });

  it("stays genuine after its key has run out, by its timestamp", async () => {
    expect((await judge(sample.file, {}, new Date("2036-01-01T00:00:00Z"))).kind).toBe("good");
  });
});

describe("what was typed from the paper", () => {
  const typed = (text: string) =>
    judge(sample.file, { ...{ host: null, status: null, token: null }, paperHash: readTypedHash(text) });

  it("accuses nobody where it is the address alone, and says where the hash is", async () => {
    for (const text of [
      `https://${sampleHost}/authenticity/${sampleToken}`,
      ` ${sampleHost}/authenticity/${sampleToken} `,
      `https://${sampleHost}/authenticity/${sampleToken}#`,
      sampleToken,
    ]) {
      const whole = await typed(text);
      const check = whole.checks.find(({ key }) => key === "paper");
      expect([text, whole.kind, check?.state]).toEqual([text, "good", "skipped"]);
      expect(check?.text).toContain("names the document in the file");
      expect(check?.text).toContain("Content SHA-256");
    }
  });

  it("is compared where it is the hash at the foot, however it was spaced, or the whole code", async () => {
    const spaced = sample.contentHash.replace(/(.{8})/g, "$1 ");
    for (const text of [spaced, `https://${sampleHost}/authenticity/${sampleToken}#${sample.contentHash}`])
      expect(stateOf(await typed(text), "paper")).toBe("passed");
    expect((await typed(other.contentHash)).kind).toBe("bad");
  });

  it("is the address of another document", async () => {
    expect(await typed(`https://${sampleHost}/authenticity/${otherToken}`)).toMatchObject({
      ...{ kind: "look", title: "The address names another document" },
    });
  });
});

describe("what is not to be relied on", () => {
  const flipped = () => sample.file.map((byte, index) => (index === 700 ? byte ^ 1 : byte));

  it.each([
    ["a flipped byte", flipped],
    ["bytes after the seal", () => Uint8Array.from([...sample.file, 10])],
    ["a cut file", () => sample.file.slice(0, sample.file.length - 200)],
    ["no PDF at all", () => new TextEncoder().encode("a letter")],
    ["nothing", () => new Uint8Array()],
  ])("%s", async (_, bytes) => {
    const whole = await judge(bytes());
    expect(whole.kind).not.toBe("good");
    expect(whole.title).toBe("Do not rely on this file");
    expect(whole.reason).not.toBe("");
  });

  it("is not accused of what was not looked at", async () => {
    const whole = await judge(flipped(), { status: null });
    const checks = whole.checks.filter(({ key }) => key === "paper" || key === "standing");
    const text = "Not looked at, because an earlier step ended the check.";
    expect(checks.map((check) => [check.state, check.text])).toEqual([
      ["skipped", text],
      ["skipped", text],
    ]);
  });

  it("another document than the page's", async () => {
    const whole = await judge(other.file);
    expect(whole).toMatchObject({ kind: "bad", title: "This is another document" });
    expect(whole.reason).toContain("C-OTHER");
    expect(stateOf(whole, "document")).toBe("failed");
  });

  it("the right document with the hash of other paper", async () => {
    const whole = await judge(sample.file, { paperHash: readPaperHash(other.contentHash) });
    expect(whole).toMatchObject({ kind: "bad", title: "Paper and file do not belong together" });
    expect(stateOf(whole, "paper")).toBe("failed");
  });

  it.each(["amended", "replaced"] as const)("one that was %s, with what follows", async (standing) => {
    const successor = { number: "C-NEXT", address: "https://calibration.example/authenticity/x" };
    const whole = await judge(sample.file, {
      status: statusOf({ standing, endedOn: "2026-04-01", successor }),
    });
    expect(whole).toMatchObject({ kind: "bad", title: `Genuine, but ${standing}` });
    expect(whole.reason).toContain("C-NEXT");
    expect(whole.reason).toContain("2026-04-01");
  });

  it("one that was withdrawn, genuine or not", async () => {
    const status = statusOf({ standing: "withdrawn", endedOn: "2026-04-01" });
    expect((await judge(sample.file, { status })).title).toBe("Genuine, but withdrawn");
    expect((await judge(flipped(), { status })).title).toBe("Do not rely on this file");
    const unlisted = await judge(sample.file, { status, keys: { ...keys.list, keys: [] } });
    expect(unlisted).toMatchObject({ kind: "bad", title: "Not in force: withdrawn" });
  });

  it("one whose key was revoked before it sealed", async () => {
    const ending = { kind: "revoked", reason: "stolen", effectiveAt: "2026-03-01T00:00:00Z" } as const;
    const listed = keys.list.keys.map((key) => (key.purpose === "seal" ? { ...key, ending } : key));
    expect((await judge(sample.file, { keys: { ...keys.list, keys: listed } })).kind).not.toBe("good");
  });
});

describe("what is left for a person to decide", () => {
  it("a seal by a key that the laboratory does not list", async () => {
    const whole = await judge(sample.file, { keys: { ...keys.list, keys: [] } });
    expect(whole).toMatchObject({ kind: "look", title: "It could not be decided", sealKey: null });
  });

  it("the data beside the PDF, with where to find the same", async () => {
    const file = new TextEncoder().encode('<?xml version="1.0"?><dcc:digitalCalibrationCertificate/>');
    const whole = await judge(file, { status: null });
    expect(whole).toMatchObject({ kind: "look", title: "Not checked: this is not the PDF" });
    expect(whole.reason).toContain("The same DCC is attached to it: check the PDF.");
    const verdict = await checkFile(file, { keys: keys.list, now: sealedOn });
    expect(verdictWords(whole, verdict).formal).not.toMatch(/its seal is|TOTAL-FAILED/);
  });

  it("a page on another host than the document names", async () => {
    const whole = await judge(sample.file, { host: "calibration.examp1e" });
    expect(whole).toMatchObject({ kind: "look", title: "This is not the place to check it" });
    expect(whole.reason).toContain("calibration.examp1e");
    expect(whole.reason).toContain(sampleHost);
  });

  it("a code that was cut, or lost what stands behind #", async () => {
    const cut = readPaperHash(sample.contentHash.slice(0, 40));
    expect((await judge(sample.file, { paperHash: cut })).title).toBe(
      "The code on your paper cannot be read",
    );
    expect((await judge(sample.file, { paperHash: readTypedHash("C-1") })).reason).toContain(
      "Content SHA-256",
    );
    const lost = await judge(sample.file, { paperHash: readPaperHash("") });
    expect(lost.kind).toBe("good");
    expect(stateOf(lost, "paper")).toBe("skipped");
  });

  it.each(["unknown", "pending"] as const)("a document that is %s to the laboratory", async (standing) => {
    const whole = await judge(sample.file, { status: statusOf({ standing, fileSha256: "" }) });
    expect(whole).toMatchObject({ kind: "look", title: "The laboratory does not know this document" });
  });

  it("a sealed file that is not the one that was issued", async () => {
    const whole = await judge(sample.file, { status: statusOf({ fileSha256: "0".repeat(64) }) });
    expect(whole).toMatchObject({ kind: "look", title: "Not the file that was issued" });
  });
});

describe("the laboratory’s log", () => {
  const logOf = (whole: WholeVerdict) => whole.checks.find(({ key }) => key === "log");

  it("still holds what it held", async () => {
    expect(logOf(await judge(sample.file))).toMatchObject({
      state: "passed",
      text: expect.stringContaining("event 4711"),
    });
  });

  it.each([
    ["changed since", "another one now", "0f".repeat(32)],
    ["set back", "shorter than it was", ""],
  ])(
    "that was %s is for a person to settle, and the seal is as good as before",
    async (title, text, logHash) => {
      const whole = await judge(sample.file, { status: statusOf({ logHash }) });
      expect(whole).toMatchObject({
        ...{ kind: "look", title: expect.stringContaining(title) },
        reason: expect.stringMatching(`${text}.*ask Sample laboratory`),
      });
      expect(logOf(whole)?.state).toBe("failed");
      expect((await checkFile(sample.file, { keys: keys.list, now: sealedOn })).verdict).toBe("total-passed");
    },
  );

  it("does not come before what makes the file worthless", async () => {
    const status = statusOf({ standing: "withdrawn", endedOn: "2026-04-01", logHash: "" });
    const whole = await judge(sample.file, { status });
    expect(whole).toMatchObject({ kind: "bad", title: "Genuine, but withdrawn" });
    expect(logOf(whole)?.state).toBe("failed");
  });

  it("is not judged by a certificate without a checkpoint, nor by a file that is nobody's", async () => {
    const { log: _, ...before } = sampleContentAt(sampleToken);
    const { file } = await sealedSample(keys, before);
    const status = statusOf({ fileSha256: sha256(file), logHash: "" });
    const paperHash = readPaperHash("");
    const whole = await judge(file, { status, paperHash });
    expect(whole.kind).toBe("good");
    expect(logOf(whole)).toMatchObject({
      state: "skipped",
      text: expect.stringContaining("carries no checkpoint"),
    });
    const unlisted = await judge(sample.file, {
      ...{ status: statusOf({ logHash: "" }), keys: { ...keys.list, keys: [] } },
    });
    expect(unlisted.title).toBe("It could not be decided");
    expect(logOf(unlisted)?.state).toBe("skipped");
  });

  it("can only be asked online, where the laboratory knows the document", async () => {
    const offline = await judge(sample.file, { host: null, status: null, token: null });
    expect(offline.kind).toBe("good");
    for (const [whole, text] of [
      [offline, "can only be asked online"],
      [await judge(sample.file, { status: null }), "was not asked"],
      [await judge(sample.file, { status: statusOf({ standing: "unknown", logHash: "" }) }), "does not know"],
    ] as const)
      expect(logOf(whole)).toMatchObject({ state: "unknown", text: expect.stringContaining(text) });
  });
});
