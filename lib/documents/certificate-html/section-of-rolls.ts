import { rollFigure, rollFigures, rollHeading, rollUnit } from "../certificate/roll-heading";
import type { Html } from "./html";
import { lines, part, type Spoken } from "./speak";
import { table } from "./table";

/** Both ends of each roll, their average and the spread. */
export const rolls = (page: Spoken): Html | null => {
  const { words, say } = page;
  const { caption, sentence } = words;
  const { rolls: said } = page.content;
  if (!said) return null;
  return part(
    page,
    { caption: caption("rolls") },
    ...said.of.map((roll) =>
      table(page, {
        caption: say(rollHeading(roll, words)),
        columns: [
          { header: caption("setpoint"), unit: caption("asOrdered"), cell: ({ setpoint }) => setpoint },
          ...rollFigures.map(([header, key]) => ({
            ...{ header: caption(header), unit: [rollUnit(roll)] as const, isNumber: true },
            cell: (row: (typeof roll.rows)[number]) => rollFigure(row, key),
          })),
        ],
        rows: roll.rows,
      }),
    ),
    lines(page, [sentence(said.statement)]),
  );
};
