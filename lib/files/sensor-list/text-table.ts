/** A table as it was written, every cell a text; what a cell could not be read as is said in its place. */
export type TableCell =
  | { readonly kind: "text"; readonly text: string }
  | { readonly kind: "refused"; readonly message: string };

export type TableRow = {
  /** As the person sees it in the file, counted from 1. */
  readonly number: number;
  readonly cells: readonly TableCell[];
};

export type TextTable = {
  readonly format: "CSV" | "XLSX";
  readonly header: { readonly number: number; readonly names: readonly string[] };
  readonly rows: readonly TableRow[];
};

export type TableProblem = {
  readonly row: number | null;
  readonly column: string | null;
  readonly message: string;
};

export type TextTableOutcome =
  | { readonly ok: true; readonly table: TextTable }
  | { readonly ok: false; readonly problem: TableProblem };

export const noTable = (
  row: number | null,
  column: string | null,
  message: string,
): { readonly ok: false; readonly problem: TableProblem } => ({
  ok: false,
  problem: { row, column, message },
});

export const textCell = (text: string): TableCell => ({ kind: "text", text });

export const isEmptyCell = (cell: TableCell): boolean => cell.kind === "text" && cell.text.trim() === "";
