import { expect } from "vitest";
import { writeDcc } from "@/lib/documents/dcc/write-dcc";
import type { DccCertificate, DccTable } from "@/lib/domain/calibration/dcc-certificate";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { readDcc } from "@/lib/files/dcc/read-dcc";
import { certificateOf, schema } from "@/tests/files/dcc/read-fixture";
import { hash } from "./every-content";

const read = new Map<CertificateContent, DccCertificate>();

/** Written, and read by the reader of others' certificates; each content once. */
export const readBack = (content: CertificateContent): DccCertificate => {
  const known =
    read.get(content) ?? certificateOf(readDcc(new TextEncoder().encode(writeDcc(content, hash)), schema));
  read.set(content, known);
  return known;
};

/** A number of the content as any program reads it. */
export const number = (typeset: string): number =>
  Number(typeset.replace("−", "-").replace(/\s/g, "").replace(",", "."));

export const numbersOf = (table: DccTable, refType: string, unit: string): readonly (number | null)[] => {
  const quantity = table.quantities.find(({ refTypes }) => refTypes.includes(refType));
  return (
    quantity?.columns.find(({ units }) => units[0] === unit)?.numbers ?? expect.fail(`${refType} ${unit}`)
  );
};
