import { createHash } from "node:crypto";
import { PDFDocument } from "pdf-lib";
import { afterEach, beforeAll, describe, expect, it, vi } from "vitest";
import { checkFile } from "@/lib/documents/authenticity/check-file";
import { pageText } from "@/lib/documents/authenticity/page-text";
import { renderCertificate } from "@/lib/documents/certificate/render-certificate";
import type { SealKeyMaterial } from "@/lib/documents/seal/key-material";
import { canonicalContent } from "@/lib/domain/certificate/content-hash";
import type { KeyList } from "@/lib/domain/seal/key-list";
import { sampleContent } from "../certificate/sample-content";
import { attachContent, content, keyOf, listed, listOf, sealed, sealedOn } from "../seal/sealed";

let rendered: Uint8Array;
let key: SealKeyMaterial;
let authority: SealKeyMaterial;
let keys: KeyList;
beforeAll(async () => {
  rendered = await renderCertificate(sampleContent, { draft: false });
  [key, authority] = [await keyOf("seal"), await keyOf("timestamp")];
  keys = listOf(listed(key, "seal"), listed(authority, "timestamp"));
});
afterEach(() => {
  vi.unstubAllGlobals();
});

const hashOf = (bytes: Uint8Array) => createHash("sha256").update(bytes).digest("hex");
const sealedWith = async (bytes: Uint8Array) => sealed(await attachContent(rendered, bytes), key, authority);
const check = (file: Uint8Array, contentHash?: string) =>
  checkFile(file, { keys, now: sealedOn, contentHash });

describe("a whole certificate", () => {
  it("prints on each page the hash of the content that it carries", async () => {
    const pages = (await PDFDocument.load(rendered)).getPages().map(pageText);
    expect(pages.length).toBeGreaterThan(1);
    expect(pages.filter((text) => !text.includes(hashOf(content)))).toEqual([]);
    expect(pages[0]).toContain(sampleContent.laboratory.name.replaceAll(" ", ""));
    expect((await check(await sealedWith(content), hashOf(content))).verdict).toBe("total-passed");
  });

  it("is found out where it carries another content than it prints, whatever is expected", async () => {
    const other = new TextEncoder().encode(canonicalContent({ ...sampleContent, issuedOn: "2026-01-01" }));
    const swapped = await sealedWith(other);
    for (const expected of [undefined, hashOf(other), hashOf(content)])
      expect(await check(swapped, expected)).toMatchObject({
        ...{ verdict: "total-failed", indication: "CONTENT_MISMATCH" },
      });
  });

  it("is checked without anything of Node's, as in a browser", async () => {
    const file = await sealedWith(content);
    vi.stubGlobal("Buffer", undefined);
    const { verdict, attachments } = await check(file, undefined);
    vi.unstubAllGlobals();
    expect([verdict, attachments.length]).toEqual(["total-passed", 1]);
  });

  it("is not judged where the browser has no means to", async () => {
    const file = await sealedWith(content);
    vi.stubGlobal("crypto", {});
    const { verdict, indication, reason } = await check(file);
    vi.unstubAllGlobals();
    expect([verdict, indication]).toEqual(["indeterminate", "NO_CRYPTOGRAPHY"]);
    expect(reason).toContain("https");
  });
});
