import type { ReadingsProblem } from "./readings-problem";

/** Where each quantity stands in a line, and by how many places its decimal point moves to give µV. */
export type ReadingsHeader = {
  readonly width: number;
  readonly time: { readonly index: number; readonly name: string; readonly kind: "seconds" | "moment" };
  readonly polarity: { readonly index: number; readonly name: string } | null;
  readonly shape:
    | { readonly kind: "long"; readonly channel: Cell; readonly emf: Cell & { readonly shift: number } }
    | {
        readonly kind: "wide";
        readonly cells: readonly (Cell & { readonly channel: string; readonly shift: number })[];
      };
};
type Cell = { readonly index: number; readonly name: string };

const formats =
  "Expected are time_s (or time), channel and emf_uV, emf_mV or emf_V; or time_s (or time) and one column per channel, named like 101 [uV].";

/** µ has two code points; both are read. */
const unitShift = (unit: string): number | null => {
  const plain = unit.trim().replace(/[µμ]/, "u").toLowerCase();
  return plain === "uv" ? 0 : plain === "mv" ? 3 : plain === "v" ? 6 : null;
};

const temperatureUnit = /^(°|º|deg)?\s*[CFK]$|^celsius$|^kelvin$/i;

const unitProblem = (name: string, unit: string): string =>
  temperatureUnit.test(unit.trim())
    ? `The column "${name}" holds temperatures (${unit.trim()}). The platform converts by itself: export the measured emf in µV, mV or V, before any linearisation or junction correction.`
    : `The unit "${unit.trim()}" of the column "${name}" is not known. Use uV, mV or V.`;

const wideShape = /^(.+?)\s*\[([^\]]*)\]$/;
const longShape = /^(?:emf|voltage|temperature|temp)_(.+)$/i;

type Named = { readonly index: number; readonly name: string; readonly plain: string };

const findOne = (columns: readonly Named[], plain: string): Named | undefined =>
  columns.find((column) => column.plain === plain);

type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly column: string | null; readonly message: string };
type Shape = ReadingsHeader["shape"];

const no = (column: string | null, message: string) => ({ ok: false as const, column, message });

const readLong = (rest: readonly Named[], channel: Named): Outcome<Shape> => {
  const others = rest.filter((column) => column !== channel);
  const emf = others.find((column) => longShape.test(column.name));
  if (!emf) return no(null, `There is no emf column. ${formats}`);
  const unit = longShape.exec(emf.name)?.[1] ?? "";
  const shift = unitShift(unit);
  if (shift === null || !emf.plain.startsWith("emf_")) return no(emf.name, unitProblem(emf.name, unit));
  const extra = others.find((column) => column !== emf);
  if (extra) return no(extra.name, `The column "${extra.name}" is not known. Remove it. ${formats}`);
  return { ok: true, value: { kind: "long", channel, emf: { index: emf.index, name: emf.name, shift } } };
};

const readWideColumn = (
  column: Named,
  channels: readonly string[],
): Outcome<Cell & { readonly channel: string; readonly shift: number }> => {
  const match = wideShape.exec(column.name);
  if (!match)
    return channels.includes(column.name)
      ? no(column.name, `The column "${column.name}" has no unit. Name it ${column.name} [uV], [mV] or [V].`)
      : no(column.name, `The column "${column.name}" is not known. ${formats}`);
  const channel = match[1] ?? "";
  const shift = unitShift(match[2] ?? "");
  if (shift === null) return no(column.name, unitProblem(column.name, match[2] ?? ""));
  if (!channels.includes(channel)) return no(column.name, unknownChannel(channel, channels));
  return { ok: true, value: { index: column.index, name: column.name, channel, shift } };
};

const readWide = (rest: readonly Named[], channels: readonly string[]): Outcome<Shape> => {
  const cells: (Cell & { channel: string; shift: number })[] = [];
  for (const column of rest) {
    const cell = readWideColumn(column, channels);
    if (!cell.ok) return cell;
    if (cells.some((other) => other.channel === cell.value.channel))
      return no(column.name, `Channel ${cell.value.channel} has two columns. Keep one of them.`);
    cells.push(cell.value);
  }
  if (cells.length === 0) return no(null, `There is no column with readings. ${formats}`);
  return { ok: true, value: { kind: "wide", cells } };
};

const readNames = (names: readonly string[]): Outcome<readonly Named[]> => {
  const columns = names.map((name, index) => ({
    index,
    name: name.trim(),
    plain: name.trim().toLowerCase(),
  }));
  const blank = columns.find((column) => column.name === "");
  if (blank) return no(`${blank.index + 1}`, `This column has no name. Name it or remove it. ${formats}`);
  const twice = columns.find(
    (column, index) => columns.findIndex((other) => other.plain === column.plain) < index,
  );
  if (twice) return no(twice.name, `The column "${twice.name}" is there twice. Keep one of them.`);
  return { ok: true, value: columns };
};

const readAll = (names: readonly string[], channels: readonly string[]): Outcome<ReadingsHeader> => {
  const named = readNames(names);
  if (!named.ok) return named;
  const columns = named.value;
  const seconds = findOne(columns, "time_s");
  const moment = findOne(columns, "time");
  if (seconds && moment) return no("time", "There are two time columns, time_s and time. Keep one of them.");
  const time = seconds ?? moment;
  if (!time) return no(null, `There is no time column. ${formats}`);
  const polarity = findOne(columns, "polarity") ?? null;
  const rest = columns.filter((column) => column !== time && column !== polarity);
  const channel = findOne(rest, "channel");
  const shape = channel ? readLong(rest, channel) : readWide(rest, channels);
  if (!shape.ok) return shape;
  return {
    ok: true,
    value: {
      width: columns.length,
      time: { index: time.index, name: time.name, kind: seconds ? "seconds" : "moment" },
      polarity,
      shape: shape.value,
    },
  };
};

/** Reads the header line. `channels` are those of the run's furnace load. */
export const readHeader = (
  names: readonly string[],
  line: number,
  channels: readonly string[],
):
  | { readonly ok: true; readonly header: ReadingsHeader }
  | { readonly ok: false; readonly problem: ReadingsProblem } => {
  const read = readAll(names, channels);
  return read.ok
    ? { ok: true, header: read.value }
    : { ok: false, problem: { line, column: read.column, message: read.message } };
};

export const unknownChannel = (name: string, channels: readonly string[]): string =>
  `Channel "${name}" is not in this run's furnace load (${channels.join(", ")}). Correct the channel, or upload the file to the run it belongs to.`;
