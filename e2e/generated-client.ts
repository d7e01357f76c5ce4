import { mkdirSync, mkdtempSync, writeFileSync } from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";
import openapiTS, { astToString } from "openapi-typescript";
import ts from "typescript";
import { stateFolder } from "@/lib/commands/checkout";

/** What a customer's programmer would write, against types generated from the document alone. */
const program = `
import createClient from "openapi-fetch";
import type { paths } from "./interface";

export const useInterface = async (baseUrl: string, token: string, key: string) => {
  const client = createClient<paths>({ baseUrl, headers: { Authorization: "Bearer " + token } });
  const body = {
    purchaseOrder: "PO 8815",
    lines: [
      {
        typeLetter: "N" as const,
        construction: "3 mm mineral-insulated, 500 mm",
        protection: "metal-sheath" as const,
        quantity: 4,
        temperatureUnit: "F" as const,
        setpoints: [1000, 1500],
      },
    ],
  };
  const params = { header: { "Idempotency-Key": key } };
  const first = await client.POST("/orders", { params, body });
  const again = await client.POST("/orders", { params, body });
  const wrong = await client.POST("/orders", {
    params: { header: { "Idempotency-Key": key + "-wrong" } },
    body: { lines: [{ ...body.lines[0]!, quantity: 0 }] },
  });
  const number: string = first.data!.number;
  const order = await client.GET("/orders/{number}", { params: { path: { number } } });
  const orders = await client.GET("/orders", {});
  const certificates = await client.GET("/certificates", {});
  const certificate = certificates.data!.certificates[0]!.number;
  const path = { params: { path: { number: certificate } } };
  const content = await client.GET("/certificates/{number}", path);
  const pdf = await client.GET("/certificates/{number}/pdf", { ...path, parseAs: "arrayBuffer" });
  const foreign = await client.GET("/certificates/{number}", { params: { path: { number: "C-1999-0001" } } });
  return {
    statuses: [first, again, wrong, order, content, pdf, foreign].map(({ response }) => response.status),
    number,
    again: again.data!.number,
    wrongFields: wrong.error?.fields,
    state: order.data!.state,
    setpoints: order.data!.lines[0]!.setpoints,
    listed: orders.data!.orders.map((one) => one.number),
    hash: content.data!.contentHash,
    listedHash: certificates.data!.certificates[0]!.contentHash,
    rows: content.data!.content.rows.length,
    pdf: new Uint8Array(pdf.data as ArrayBuffer),
  };
};
`;

type Used = {
  readonly statuses: readonly number[];
  readonly number: string;
  readonly again: string;
  readonly wrongFields: Record<string, string> | undefined;
  readonly state: string;
  readonly setpoints: readonly string[];
  readonly listed: readonly string[];
  readonly hash: string;
  readonly listedHash: string;
  readonly rows: number;
  readonly pdf: Uint8Array;
};

const complaintsOf = (file: string): readonly string[] => {
  const compiled = ts.createProgram([file], {
    module: ts.ModuleKind.ESNext,
    moduleResolution: ts.ModuleResolutionKind.Bundler,
    target: ts.ScriptTarget.ES2022,
    lib: ["lib.es2023.d.ts", "lib.dom.d.ts", "lib.dom.iterable.d.ts"],
    types: [],
    strict: true,
    noEmit: true,
    skipLibCheck: true,
  });
  return ts
    .getPreEmitDiagnostics(compiled)
    .map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, "\n"));
};

/** Generates types from an OpenAPI document, holds the program to them, and gives it back to be run. */
export const generateClient = async (document: unknown) => {
  mkdirSync(stateFolder, { recursive: true });
  // Inside the checkout, so that the program finds its library.
  const folder = mkdtempSync(path.join(stateFolder, "generated-client-"));
  writeFileSync(
    path.join(folder, "interface.ts"),
    astToString(await openapiTS(document as never, { defaultNonNullable: false })),
  );
  const file = path.join(folder, "program.ts");
  writeFileSync(file, program);
  const complaints = complaintsOf(file);
  const script = path.join(folder, "program.mjs");
  writeFileSync(
    script,
    ts.transpile(program, { module: ts.ModuleKind.ESNext, target: ts.ScriptTarget.ES2022 }),
  );
  const { useInterface } = (await import(pathToFileURL(script).href)) as {
    useInterface: (baseUrl: string, token: string, key: string) => Promise<Used>;
  };
  return { complaints, useInterface, folder };
};
