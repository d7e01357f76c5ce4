import { expect } from "vitest";
import { readDcc } from "@/lib/files/dcc/read-dcc";
import { tableForReference } from "@/lib/files/dcc/table-for-reference";
import { good } from "./change-passage";
import { certificateOf } from "./read-fixture";

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
export const proposalsFor = (text: string, type?: Parameters<typeof tableForReference>[1]) =>
  tableForReference(certificateOf(readDcc(bytesOf(text))), type);

export const only = (text: string, type?: Parameters<typeof tableForReference>[1]) => {
  const { offers } = proposalsFor(text, type);
  expect(offers).toHaveLength(1);
  return offers[0] ?? expect.fail();
};
export const reference = (text: string, type?: Parameters<typeof tableForReference>[1]) => {
  const offer = only(text, type);
  return offer.kind === "reference" ? offer : expect.fail(`offered as ${offer.kind}`);
};

const quantityOf = (name: string): string => {
  const at = good.indexOf(`<dcc:quantity refType="${name}`);
  return good.slice(at, good.indexOf("</dcc:quantity>", at) + "</dcc:quantity>".length);
};
export const deviation = quantityOf("basic_measurementError");
export const emfColumn = quantityOf("basic_measuredValue");
