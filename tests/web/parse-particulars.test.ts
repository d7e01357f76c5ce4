import { describe, expect, it } from "vitest";
import { parseParticulars } from "@/app/(lab)/standards/parse-particulars";
import { Particulars } from "@/lib/domain/equipment/particulars";

const form = (fields: Readonly<Record<string, string>>): FormData => {
  const data = new FormData();
  for (const [name, value] of Object.entries(fields)) data.set(`particulars.${name}`, value);
  return data;
};

describe("the figures of a piece of equipment, as typed", () => {
  const junction = { kind: "junction", celsius: "0", halfWidthCelsius: "0,05", basis: "invented" };

  it("keep what is optional out of the record where nothing was written", () => {
    const parsed = parseParticulars(form({ ...junction, spreadHalfWidthCelsius: "", block: " " }));
    expect(Particulars.parse(parsed)).toEqual({
      kind: "junction",
      celsius: 0,
      halfWidthCelsius: 0.05,
      basis: "invented",
    });
  });

  it("take the spread and the name of a block of junctions", () => {
    const parsed = parseParticulars(form({ ...junction, spreadHalfWidthCelsius: "0.03", block: "Block 1" }));
    expect(Particulars.parse(parsed)).toMatchObject({ spreadHalfWidthCelsius: 0.03, block: "Block 1" });
  });

  it("refuse an optional figure that is no number, rather than leave it out", () => {
    const parsed = parseParticulars(form({ ...junction, spreadHalfWidthCelsius: "a little" }));
    const judged = Particulars.safeParse(parsed);
    expect(judged.error?.issues[0]?.path).toEqual(["spreadHalfWidthCelsius"]);
  });
});
