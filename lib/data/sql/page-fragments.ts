import type { Turn } from "@/lib/domain/list/page";
import { Prisma } from "@/lib/generated/prisma/client";

/** Sorts after every text that begins with what stands before it, byte by byte. */
const lastCharacter = "\u{10FFFF}";

/** As the generated columns hold it: small letters, and nothing of what people leave out. Keep to migration 0028. */
export const keyOfText = (text: Prisma.Sql): Prisma.Sql => Prisma.sql`lower(translate(${text}, ' -_/.', ''))`;
export const keyOf = (text: string): Prisma.Sql => keyOfText(Prisma.sql`${text}::text`);
export const tailOf = (text: string): Prisma.Sql => Prisma.sql`reverse(${keyOf(text)})`;

/** As tags and numbers are written. */
export const upperOf = (text: string): Prisma.Sql => Prisma.sql`upper(${text}::text)`;
/** The customer's name holds it anywhere: of these there are few. */
export const isNamed = (customer: Prisma.Sql, text: string): Prisma.Sql =>
  Prisma.sql`position(lower(${text}::text) IN lower(${customer}.name)) > 0`;

/**
 * The column begins with it. Not LIKE, which is not leakproof: behind row-level security it could use no index. The
 * bytewise comparisons are, and use those with text_pattern_ops.
 */
export const beginsWith = (column: Prisma.Sql, key: Prisma.Sql): Prisma.Sql =>
  Prisma.sql`(${key} <> '' AND ${column} ~>=~ ${key} AND ${column} ~<~ (${key} || ${lastCharacter}))`;

/** The sensor's serial holds it anywhere, from three characters on: looked up by pieces of three, see migration 0053. */
export const serialHolds = (sensorId: Prisma.Sql, text: string, most: number): Prisma.Sql =>
  Prisma.sql`${sensorId} = ANY (ARRAY(SELECT sensors_with_serial_part(${keyOf(text)}, ${most}::int)))`;

/** What stands on this side of the anchor, in a list whose newest come first, by a moment and what is unique beside it. */
export const onThisSide = (
  turn: Turn,
  columns: { readonly moment: Prisma.Sql; readonly id: Prisma.Sql },
  anchored: (column: "moment" | "id") => Prisma.Sql,
): Prisma.Sql => {
  if (turn.kind === "first") return Prisma.sql`true`;
  const sign = turn.kind === "after" ? Prisma.sql`<` : Prisma.sql`>`;
  return Prisma.sql`(${columns.moment}, ${columns.id}) ${sign} (${anchored("moment")}, ${anchored("id")})`;
};

/** Newest first; a page before an anchor is read backwards. */
export const direction = (turn: Turn): Prisma.Sql =>
  turn.kind === "before" ? Prisma.sql`ASC` : Prisma.sql`DESC`;

export const allOf = (conditions: readonly Prisma.Sql[]): Prisma.Sql =>
  conditions.length === 0 ? Prisma.sql`true` : Prisma.join([...conditions], " AND ");
