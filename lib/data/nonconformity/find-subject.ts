import type { SubjectKind } from "@/lib/domain/nonconformity/labels";
import type { Tx } from "../in-scope";
import { isUuid } from "../is-uuid";

export type Subject = {
  readonly id: string | null;
  readonly name: string;
  /** Of things that are one customer's. */
  readonly customerId: string | null;
};

type Find = (tx: Tx, name: string) => Promise<Subject | null>;
const named = (row: { id: string; customerId?: string } | null, name: string): Subject | null =>
  row && { id: row.id, name, customerId: row.customerId ?? null };

const finders: Readonly<Record<SubjectKind, Find>> = {
  sensor: async (tx, tag) => named(await tx.sensor.findUnique({ where: { tag } }), tag),
  order: async (tx, number) => named(await tx.order.findUnique({ where: { number } }), number),
  certificate: async (tx, number) => named(await tx.certificate.findUnique({ where: { number } }), number),
  /** By its id, or by its name where no other has the same. */
  customer: async (tx, name) => {
    const [row, other] = await tx.customer.findMany({
      where: isUuid(name) ? { id: name } : { name },
      select: { id: true, name: true },
      take: 2,
    });
    return row && !other ? { id: row.id, name: row.name, customerId: row.id } : null;
  },
  run: async (tx, number) => {
    const row = await tx.run.findUnique({ where: { number }, select: { id: true } });
    return named(row, number);
  },
  equipment: async (tx, tag) => {
    const row = await tx.equipment.findUnique({ where: { tag }, select: { id: true } });
    return named(row, tag);
  },
  /** By its id, or by the number of its certificate. */
  calibration: async (tx, name) => {
    const row = await tx.calibration.findFirst({
      where: isUuid(name) ? { id: name } : { certificate: name },
      orderBy: { recordedAt: "desc" },
      select: { id: true, certificate: true },
    });
    return row && { id: row.id, name: row.certificate, customerId: null };
  },
  laboratory: async () => ({ id: null, name: "as a whole", customerId: null }),
};

/** What a person named, found; null: there is no such thing. */
export const findSubject = (tx: Tx, kind: SubjectKind, name: string): Promise<Subject | null> =>
  finders[kind](tx, name);
