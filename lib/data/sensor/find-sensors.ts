import type { Tx } from "../in-scope";

const most = 20;

const select = {
  tag: true,
  serial: true,
  typeLetter: true,
  state: true,
  line: { select: { order: { select: { number: true, customer: { select: { name: true } } } } } },
} as const;

/** By the laboratory's tag: one or none. */
export const findByTag = (tx: Tx, tag: string) => tx.sensor.findMany({ where: { tag }, select });

/** By serial: as written, which an index answers; else without regard to case. The newest first. */
export const findBySerial = async (tx: Tx, serial: string) => {
  const usual = [...new Set([serial, serial.toUpperCase(), serial.toLowerCase()])];
  const orderBy = { tag: "desc" } as const;
  const found = await tx.sensor.findMany({ where: { serial: { in: usual } }, select, orderBy, take: most });
  if (found.length > 0) return found;
  // In a pattern these three would stand for other signs.
  const literal = serial.replace(/[\\%_]/g, (sign) => `\\${sign}`);
  const where = { serial: { equals: literal, mode: "insensitive" as const } };
  return tx.sensor.findMany({ where, select, orderBy, take: most });
};
