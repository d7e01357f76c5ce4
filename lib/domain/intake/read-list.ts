import type { z } from "zod";
import { hiddenCharacterIn, hiddenCharacterMessage } from "../hidden-character";
import { buildOf } from "../sensor/build-draft";
import type { SensorAtIntake } from "../sensor/schema";
import { serialKey } from "../sensor/serials";
import { columnNamed, type ListColumn, ListRow, listColumns, wordIn, wordsToWrite } from "./columns";

/** A cell as it stands in the file, or why it could not be read. */
export type ListCell =
  | { readonly kind: "text"; readonly text: string }
  | { readonly kind: "refused"; readonly message: string };

export type ListTable = {
  readonly header: { readonly number: number; readonly names: readonly string[] };
  readonly rows: readonly { readonly number: number; readonly cells: readonly ListCell[] }[];
};

/** A cell that is refused: its row and column as they stand in the file, what is wrong and the remedy. */
export type ListProblem = { readonly row: number; readonly column: string; readonly message: string };

export type ListLine = { readonly position: number; readonly typeLetter: string };

export type ListSensor = SensorAtIntake & { readonly position: number };

export type ListRead =
  | { readonly ok: true; readonly sensors: readonly ListSensor[] }
  | { readonly ok: false; readonly problems: readonly ListProblem[] };

type Placed = { readonly name: string; readonly at: number; readonly column: ListColumn };

const placeColumns = ({
  header,
}: ListTable): { readonly placed: readonly Placed[]; readonly problems: ListProblem[] } => {
  const placed: Placed[] = [];
  const problems: ListProblem[] = [];
  for (const [at, raw] of header.names.entries()) {
    const name = raw.trim();
    if (name === "") continue;
    const column = columnNamed(name);
    const say = (message: string) =>
      problems.push({ row: header.number, column: name.slice(0, 60), message });
    if (!column) say("This column is not known. Take it out, or give it a name of the template.");
    else if (placed.some((before) => before.column.field === column.field))
      say("This column is there twice. Keep one of them.");
    else placed.push({ name, at, column });
  }
  if (!placed.some(({ column }) => column.field === "serial"))
    problems.push({
      row: header.number,
      column: "serial",
      message: `There is no column of serials. Name it “${listColumns[0]?.names[0]}”.`,
    });
  return { placed, problems };
};

type RowText = { readonly number: number; readonly texts: ReadonlyMap<string, string> };

/** The texts of one row by field; words of a closed list become the platform's own. */
const textsOf = (
  row: ListTable["rows"][number],
  placed: readonly Placed[],
  problems: ListProblem[],
): RowText => {
  const texts = new Map<string, string>();
  for (const { name, at, column } of placed) {
    const cell = row.cells[at];
    if (!cell) continue;
    const say = (message: string) => problems.push({ row: row.number, column: name, message });
    if (cell.kind === "refused") {
      say(cell.message);
      continue;
    }
    const typed = cell.text.replace(/\s+/g, " ").trim();
    const named = hiddenCharacterIn(cell.text);
    if (named) say(hiddenCharacterMessage(named));
    else if (typed === "" || !column.words) texts.set(column.field, typed);
    else {
      const word = wordIn(column, typed);
      if (word === undefined) say(`“${typed.slice(0, 40)}” is not one of: ${wordsToWrite(column)}.`);
      else texts.set(column.field, word);
    }
  }
  return { number: row.number, texts };
};

/** The order line a row belongs to: as it says, or the only one of its type, or the only one there is. */
const positionOf = (
  { number, texts }: RowText,
  lines: readonly ListLine[],
  chosen: number | null,
): number | ListProblem => {
  const stated = texts.get("line") ?? "";
  const letter = (texts.get("typeLetter") ?? "").replace(/^type /i, "").toUpperCase();
  const fitting = lines.filter(({ typeLetter }) => letter === "" || typeLetter === letter);
  if (stated !== "") {
    const line = lines.find(({ position }) => String(position) === stated);
    if (!line)
      return { row: number, column: "order line", message: `This order has no line ${stated.slice(0, 20)}.` };
    return fitting.includes(line)
      ? line.position
      : {
          row: number,
          column: "type",
          message: `Line ${stated} orders type ${line.typeLetter}, this says ${letter.slice(0, 20)}. Mend the one or the other.`,
        };
  }
  if (fitting.length === 0)
    return { row: number, column: "type", message: `This order has no line of type ${letter.slice(0, 20)}.` };
  const own = fitting.find(({ position }) => position === chosen);
  if (own) return own.position;
  if (fitting.length === 1) return fitting[0]!.position;
  return {
    row: number,
    column: "order line",
    message: `Lines ${fitting.map(({ position }) => position).join(", ")} fit. Write which one in a column “order line”.`,
  };
};

const nameOfField = (placed: readonly Placed[], field: string): string =>
  placed.find(({ column }) => column.field === field)?.name ?? field;

/** A comma in a number can be a decimal mark or part a thousand: it is never guessed. */
const withComma = (issue: z.core.$ZodIssue, typed: string): string =>
  /^\d+,\d+$/.test(typed)
    ? `“${typed.slice(0, 40)}” has a comma. Write ${typed.slice(0, 40).replace(",", ".")}, with a decimal point.`
    : `${typed === "" ? "" : `“${typed.slice(0, 40)}”: `}${issue.message}`;

const sensorOf = (
  row: RowText,
  position: number,
  placed: readonly Placed[],
  problems: ListProblem[],
): ListSensor | null => {
  const parsed = ListRow.safeParse(Object.fromEntries(row.texts));
  if (!parsed.success) {
    for (const issue of parsed.error.issues) {
      const field = String(issue.path[0]);
      problems.push({
        row: row.number,
        column: nameOfField(placed, field),
        message: withComma(issue, row.texts.get(field) ?? ""),
      });
    }
    return null;
  }
  const draft = parsed.data;
  const condition = draft.condition || "as-described";
  if (condition === "deviates" && draft.conditionNote === "") {
    problems.push({
      row: row.number,
      column: nameOfField(placed, "conditionNote"),
      message: "Write what deviates or is damaged.",
    });
    return null;
  }
  return {
    line: row.number,
    serial: row.texts.get("serial") ?? "",
    position,
    condition,
    conditionNote: draft.conditionNote,
    loopResistanceOhm: draft.loopResistanceOhm,
    insulationMegaohm: draft.insulationMegaohm,
    polarity: draft.polarity || "not-checked",
    typeCheck: draft.typeCheck || "not-checked",
    grounding: draft.grounding || "not-checked",
    build: buildOf(draft),
  };
};

const serialProblem = (row: RowText, first: Map<string, number>): string | null => {
  const serial = row.texts.get("serial") ?? "";
  if (serial === "") return "The serial is missing. Write it, or take the row out.";
  if (serial.length > 120) return "A serial has at most 120 characters.";
  if (/\p{Cc}/u.test(serial)) return "This holds a control character. Type it anew.";
  const before = first.get(serialKey(serial));
  if (before !== undefined)
    return `“${serial.slice(0, 40)}” stands in row ${before} as well. Take one of them out.`;
  first.set(serialKey(serial), row.number);
  return null;
};

/** The sensors of a list, or every cell that is wrong: nothing is guessed and nothing left out in silence. */
export const readSensorList = (
  table: ListTable,
  lines: readonly ListLine[],
  /** The line chosen on the form for rows that name none; null = told by the file. */
  chosen: number | null,
): ListRead => {
  const { placed, problems } = placeColumns(table);
  if (problems.length > 0) return { ok: false, problems };
  const first = new Map<string, number>();
  const sensors: ListSensor[] = [];
  for (const raw of table.rows) {
    const row = textsOf(raw, placed, problems);
    const hasSerialProblem = problems.some(
      ({ row: number, column }) => number === raw.number && column === nameOfField(placed, "serial"),
    );
    const wrong = hasSerialProblem ? null : serialProblem(row, first);
    if (wrong) problems.push({ row: raw.number, column: nameOfField(placed, "serial"), message: wrong });
    const position = positionOf(row, lines, chosen);
    if (typeof position !== "number") {
      problems.push(position);
      continue;
    }
    const sensor = sensorOf(row, position, placed, problems);
    if (sensor) sensors.push(sensor);
  }
  return problems.length > 0 ? { ok: false, problems } : { ok: true, sensors };
};
