/** How labels lie on what they are printed on. A new sheet is a new entry here and nothing else. */
export type LabelLayout = {
  readonly name: string;
  readonly widthMillimetre: number;
  readonly heightMillimetre: number;
  /** null: a roll, one label a page. Otherwise the sheet: labels row by row, from its upper left corner. */
  readonly sheet: {
    readonly widthMillimetre: number;
    readonly heightMillimetre: number;
    readonly columns: number;
    readonly rows: number;
    readonly leftMillimetre: number;
    readonly topMillimetre: number;
    readonly columnPitchMillimetre: number;
    readonly rowPitchMillimetre: number;
  } | null;
};

export const labelLayoutNames = ["roll-50x25", "a4-3x8", "a4-4x10"] as const;
export type LabelLayoutName = (typeof labelLayoutNames)[number];

const a4 = { widthMillimetre: 210, heightMillimetre: 297 } as const;

/** Sizes of sheets as they are usually sold: common practice, no source. */
export const labelLayouts: Readonly<Record<LabelLayoutName, LabelLayout>> = {
  "roll-50x25": { name: "Roll, 50 × 25 mm", widthMillimetre: 50, heightMillimetre: 25, sheet: null },
  "a4-3x8": {
    name: "Sheet A4, 3 × 8 of 70 × 37 mm",
    widthMillimetre: 70,
    heightMillimetre: 37,
    sheet: {
      ...a4,
      columns: 3,
      rows: 8,
      leftMillimetre: 0,
      topMillimetre: 0.5,
      columnPitchMillimetre: 70,
      rowPitchMillimetre: 37,
    },
  },
  "a4-4x10": {
    name: "Sheet A4, 4 × 10 of 48.5 × 25.4 mm",
    widthMillimetre: 48.5,
    heightMillimetre: 25.4,
    sheet: {
      ...a4,
      columns: 4,
      rows: 10,
      leftMillimetre: 8,
      topMillimetre: 21.5,
      columnPitchMillimetre: 48.5,
      rowPitchMillimetre: 25.4,
    },
  },
};

export const labelsPerPage = ({ sheet }: LabelLayout): number => (sheet ? sheet.columns * sheet.rows : 1);

/** What is wrong with the place that printing begins at, with the remedy; null where nothing is. A roll has no places. */
export const startProblem = (layout: LabelLayout, startAt: number): string | null => {
  const most = labelsPerPage(layout);
  if (!layout.sheet || (Number.isInteger(startAt) && startAt >= 1 && startAt <= most)) return null;
  return `This sheet has ${most} labels: write a whole number from 1 to ${most}. On a fresh sheet the first free one is 1.`;
};

export type LabelPlace = {
  readonly page: number;
  readonly leftMillimetre: number;
  readonly topMillimetre: number;
};

/** Where the label of this index lies, when the first one goes to place `startAt` (from 1): a sheet may be begun. */
export const labelPlace = (layout: LabelLayout, index: number, startAt: number): LabelPlace => {
  const { sheet } = layout;
  if (!sheet) return { page: index, leftMillimetre: 0, topMillimetre: 0 };
  const at = index + startAt - 1;
  const onPage = at % labelsPerPage(layout);
  return {
    page: Math.floor(at / labelsPerPage(layout)),
    leftMillimetre: sheet.leftMillimetre + (onPage % sheet.columns) * sheet.columnPitchMillimetre,
    topMillimetre: sheet.topMillimetre + Math.floor(onPage / sheet.columns) * sheet.rowPitchMillimetre,
  };
};
