import { readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { diag } from "libxml2-wasm";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { describeDccProblem } from "@/lib/files/dcc/dcc-certificate";
import { readDcc } from "@/lib/files/dcc/read-dcc";
import { certificateOf, demonstration, problemsOf, schema } from "./read-fixture";

const encode = (text: string): Uint8Array => new TextEncoder().encode(text);
const good = new TextDecoder().decode(demonstration());
const secret = path.join(tmpdir(), `emfolio-secret-${process.pid}.txt`);

/** With a document type before the root element, and an entity of it where the laboratory's name was. */
const withDoctype = (doctype: string, entity: string): Uint8Array =>
  encode(
    good
      .replace("<dcc:digitalCal", `${doctype}\n<dcc:digitalCal`)
      .replace("Northfell Thermometry Laboratory (invented)", entity),
  );

const bomb = `<!DOCTYPE b [<!ENTITY a0 "aaaaaaaaaa">${Array.from({ length: 12 }, (_, n) => `<!ENTITY a${n + 1} "${`&a${n};`.repeat(10)}">`).join("")}]>`;

beforeAll(() => {
  writeFileSync(secret, "the-secret-of-the-server");
  diag.configure({ enabled: true });
});
afterAll(() => diag.configure({ enabled: false }));

describe("a document type is refused before anything is read", () => {
  it.each([
    ["an external entity of a file", `<!DOCTYPE x [<!ENTITY e SYSTEM "file://${secret}">]>`, "&e;"],
    ["an external entity of an address", '<!DOCTYPE x [<!ENTITY e SYSTEM "http://127.0.0.1:9/e">]>', "&e;"],
    ["an external subset", '<!DOCTYPE x SYSTEM "http://127.0.0.1:9/x.dtd">', "name"],
    ["a parameter entity", `<!DOCTYPE x [<!ENTITY % p SYSTEM "file://${secret}"> %p;]>`, "name"],
    ["an entity bomb", bomb, "&a12;"],
    ["an entity that calls itself", '<!DOCTYPE x [<!ENTITY a "&b;"><!ENTITY b "&a;">]>', "&a;"],
    ["one after comments and instructions", "<!-- a --><?b c?><!-- d -->\n<!DOCTYPE x>", "name"],
  ])("%s", (_, doctype, entity) => {
    const [problem, ...others] = problemsOf(readDcc(withDoctype(doctype, entity), schema));
    expect(problem?.code).toBe("forbidden");
    expect(problem?.line).toBeGreaterThan(0);
    expect(problem?.message).toContain("<!DOCTYPE");
    expect(others).toEqual([]);
    expect(JSON.stringify(problem)).not.toContain("the-secret");
  });

  it("in UTF-16 too, where its bytes look different", () => {
    const text = good
      .replace('encoding="UTF-8"', 'encoding="UTF-16"')
      .replace("<dcc:digitalCal", "<!DOCTYPE x>\n<dcc:digitalCal");
    const bytes = Buffer.from(`\uFEFF${text}`, "utf16le");
    expect(problemsOf(readDcc(bytes))[0]?.code).toBe("forbidden");
  });

  it("and an entity that nobody declared is no text", () => {
    const [problem] = problemsOf(readDcc(encode(good.replace("Kiln Lane", "&kiln;"))));
    expect(problem?.code).toBe("not-xml");
    expect(problem?.line).toBe(good.slice(0, good.indexOf("Kiln Lane")).split("\n").length);
  });
});

describe("what the file names is not fetched", () => {
  it("neither schemas by schemaLocation nor included files", () => {
    const located = good.replace(
      'schemaVersion="3.3.0"',
      `xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance" xsi:schemaLocation="https://ptb.de/dcc file://${secret} urn:x http://127.0.0.1:9/x.xsd" schemaVersion="3.3.0"`,
    );
    const certificate = certificateOf(readDcc(encode(located), schema));
    expect(certificate.uniqueIdentifier).toBe("NTL-26-11207");
    const included = good.replace(
      "<dcc:dccSoftware>",
      `<xi:include xmlns:xi="http://www.w3.org/2001/XInclude" href="file://${secret}" parse="text"/><dcc:dccSoftware>`,
    );
    const problems = problemsOf(readDcc(encode(included), schema));
    expect(problems[0]).toMatchObject({
      code: "structure",
      path: "/digitalCalibrationCertificate/administrativeData/include",
    });
    expect(JSON.stringify(problems)).not.toContain("the-secret");
    expect(readFileSync(secret, "utf8")).toBe("the-secret-of-the-server");
  });
});

describe("size and depth", () => {
  it("more than 10 MB is refused at once, without parsing", () => {
    const bytes = new Uint8Array(10 * 1024 * 1024 + 1).fill(60);
    const [problem] = problemsOf(readDcc(bytes));
    expect(problem).toMatchObject({ code: "too-large", path: "", line: 0 });
    expect(describeDccProblem(problem ?? expect.fail())).toContain("10 MB");
  });

  it("10 MB of elements end at the limit", () => {
    const [problem] = problemsOf(readDcc(encode(`<a>${"<b/>".repeat(2_000_000)}</a>`)));
    expect(problem?.code).toBe("too-large");
    expect(problem?.path).toMatch(/^\/a\/b\[\d+\]$/);
  });

  it.each([61, 255, 1_000, 500_000])("elements nested %i deep", (depth) => {
    const [problem] = problemsOf(readDcc(encode(`${"<a>".repeat(depth)}${"</a>".repeat(depth)}`)));
    expect(["forbidden", "not-xml"]).toContain(problem?.code);
    expect(problem?.line).toBe(1);
  });

  it("a text of 9 MB in one element is only a value that is refused or kept", () => {
    const long = good.replace("Kiln Lane", "K".repeat(9 * 1024 * 1024));
    expect(certificateOf(readDcc(encode(long))).issuer.contact.address?.street).toHaveLength(9 * 1024 * 1024);
  });
});

describe("bytes that are no certificate", () => {
  it.each([
    ["nothing", new Uint8Array(0), "not-xml"],
    ["no XML", encode("not,xml\n1,2\n"), "not-xml"],
    ["zeros", new Uint8Array(100), "not-xml"],
    ["a PDF", encode("%PDF-1.7\n%âãÏÓ\n"), "not-xml"],
    [
      "broken UTF-8",
      new Uint8Array([...encode("<?xml version='1.0'?><a>"), 0xc3, 0x28, ...encode("</a>")]),
      "not-xml",
    ],
    ["an encoding nobody reads", encode('<?xml version="1.0" encoding="EBCDIC-CP-US"?><a/>'), "not-xml"],
    ["other XML", encode("<invoice/>"), "not-a-dcc"],
    [
      "the right name in another namespace",
      encode('<digitalCalibrationCertificate xmlns="urn:x" schemaVersion="3.3.0"/>'),
      "not-a-dcc",
    ],
  ])("%s", (_, bytes, code) => {
    const [problem, ...others] = problemsOf(readDcc(bytes, schema));
    expect(problem?.code).toBe(code);
    expect(problem?.message.length).toBeGreaterThan(30);
    expect(others).toEqual([]);
  });

  it("a certificate in Latin-1 or with a byte order mark is read by its own words", () => {
    const latin = Buffer.from(
      good.replace('encoding="UTF-8"', 'encoding="ISO-8859-1"').replace("Kiln Lane", "Straße"),
      "latin1",
    );
    expect(certificateOf(readDcc(latin)).issuer.contact.address?.street).toBe("Straße");
    const marked = Buffer.concat([Buffer.from([0xef, 0xbb, 0xbf]), demonstration()]);
    expect(certificateOf(readDcc(marked, schema)).uniqueIdentifier).toBe("NTL-26-11207");
  });
});

it("gives back the parser's memory, whatever came", () => {
  readDcc(demonstration(), schema); // the compiled schema stays, once
  const held = () => JSON.stringify(diag.report().XmlDocument?.totalInstances ?? 0);
  const before = held();
  for (const bytes of [
    demonstration(),
    encode("<a><b></a>"),
    encode("<a/>"),
    encode(good.replace("2026-09-16", "x")),
  ])
    readDcc(bytes, schema);
  expect(held()).toBe(before);
});
