import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { execute } from "@/lib/operations/execute";
import { changeFurnace } from "@/lib/operations/furnace/change";
import { recordFurnace } from "@/lib/operations/furnace/record";
import { recordConfiguration } from "@/lib/operations/furnace/record-configuration";
import { furnaceView } from "@/lib/views/furnace";
import { refusalOf } from "../../support/front-desk";
import { benchClock, openRunBench, type RunBench } from "../../support/run-bench";

let bench: RunBench;
beforeAll(async () => {
  bench = await openRunBench();
});
afterAll(() => bench.close());

const furnace = {
  name: "Three zones",
  maker: "Invented Works",
  serial: "3Z",
  minimumCelsius: 200,
  maximumCelsius: 1200,
  boreMillimetre: 60,
  lengthMillimetre: 900,
  zones: 3,
  bestImmersionMillimetre: 400,
  workingLengthMillimetre: 60,
  controllerSetpoints: [{ celsius: 700, controllerCelsius: 698 }],
  rampUpCelsiusPerHour: 600,
  rampDownCelsiusPerHour: null,
};
const fieldsOf = async (work: Promise<unknown>) => Object.keys((await refusalOf(work)).fields ?? {});
const recorded = (tag: string, more: Partial<typeof furnace> = {}) =>
  execute(recordFurnace, bench.technician, { tag, ...furnace, ...more }, benchClock);

describe("a furnace's record", () => {
  it("keeps every field, and a change keeps the others", async () => {
    const { id } = await recorded("FUR-30");
    const read = () => furnaceView(bench.technician, id, "2026-10-15");
    expect(await read()).toMatchObject({ ...furnace, version: 1 });
    const change = { id, version: 1, ...furnace, rampDownCelsiusPerHour: 300 };
    await execute(changeFurnace, bench.technician, change, benchClock);
    expect(await read()).toMatchObject({
      rampDownCelsiusPerHour: 300,
      controllerSetpoints: furnace.controllerSetpoints,
    });
    expect(
      await refusalOf(execute(changeFurnace, bench.technician, { ...change, version: 2 }, benchClock)),
    ).toMatchObject({
      code: "rule",
    });
  });

  it("is refused where one field contradicts another", async () => {
    expect(
      await fieldsOf(recorded("FUR-31", { bestImmersionMillimetre: 901, workingLengthMillimetre: 1000 })),
    ).toEqual(expect.arrayContaining(["bestImmersionMillimetre", "workingLengthMillimetre"]));
    const held = [{ celsius: 1300, controllerCelsius: 1300 }];
    expect(await fieldsOf(recorded("FUR-31", { controllerSetpoints: held }))).toEqual([
      "controllerSetpoints.0.celsius",
    ]);
    const twice = [furnace.controllerSetpoints[0]!, furnace.controllerSetpoints[0]!];
    expect(await fieldsOf(recorded("FUR-31", { controllerSetpoints: twice }))).toEqual([
      "controllerSetpoints",
    ]);
  });
});

describe("a configuration", () => {
  const bore = (number: string, xMillimetre: number) => ({
    number,
    diameterMillimetre: 8,
    xMillimetre,
    yMillimetre: 0,
  });
  const configure = async (more: Record<string, unknown>) => {
    const { furnaceId } = bench as unknown as { furnaceId: string };
    return execute(
      recordConfiguration,
      bench.technician,
      {
        furnaceId,
        name: "Block",
        kind: "equalising-block",
        places: 2,
        immersionMillimetre: 400,
        bores: [bore("1", 0), bore("2", 15)],
        ...more,
      },
      benchClock,
    );
  };
  beforeAll(async () => {
    Object.assign(bench, { furnaceId: (await recorded("FUR-32")).id });
  });

  it("keeps its numbered bores", async () => {
    const { furnaceId } = await configure({ name: "Good block" });
    const { configurations } = await furnaceView(bench.technician, furnaceId, "2026-10-15");
    expect(configurations[0]?.bores).toEqual([bore("1", 0), bore("2", 15)]);
  });

  it("is refused where its bores do not fit, meet, repeat a number or are not as many as its places", async () => {
    expect(await fieldsOf(configure({ bores: [bore("1", 0), bore("2", 27)] }))).toEqual([
      "bores.1.xMillimetre",
    ]);
    expect(await fieldsOf(configure({ bores: [bore("1", 0), bore("2", 7)] }))).toEqual([
      "bores.1.xMillimetre",
    ]);
    expect(await fieldsOf(configure({ bores: [bore("1", 0), bore("1", 15)] }))).toEqual(["bores"]);
    expect(await fieldsOf(configure({ places: 3 }))).toEqual(["places"]);
    expect(await fieldsOf(configure({ kind: "bare-tube" }))).toEqual(["bores"]);
    expect(await fieldsOf(configure({ kind: "bare-tube", bores: [], bundleDiameterMillimetre: 61 }))).toEqual(
      ["bundleDiameterMillimetre"],
    );
  });
});
