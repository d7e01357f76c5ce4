import type { ReactElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, it } from "vitest";
import { FarFigures } from "@/app/(lab)/runs/[number]/far-figures";
import { ResultTable } from "@/app/(lab)/runs/[number]/results/result-table";
import { TemperatureStrip } from "@/app/(lab)/runs/[number]/temperature-strip";
import { RunTable } from "@/app/(lab)/runs/run-table";
import type { RunResultsView } from "@/lib/views/run/run-results";
import type { RunWindowsView } from "@/lib/views/run/run-windows";
import type { RunsView } from "@/lib/views/run/runs";

const html = (element: ReactElement) => renderToStaticMarkup(element);
const words = (element: ReactElement) => html(element).replaceAll(/<[^>]+>/g, " ");

const windows = (state: string, now: { celsius: number; seconds: number } | null) =>
  ({
    head: { state, setpoints: [{ isOpen: false }] },
    current: { celsius: 1100 },
    now,
    traces: [],
  }) as unknown as RunWindowsView;

describe("what is read from far", () => {
  const last = { celsius: 1099.5, seconds: 19_920 };
  it("speaks of a present only while the furnace is hot", () => {
    expect(words(<FarFigures view={windows("measuring", last)} />)).toContain("Current setpoint");
    const over = words(<FarFigures view={windows("signed-off", last)} />);
    expect(over).toContain("Last setpoint");
    expect(over).toMatch(/5 h 32 min\s+First to last reading/);
    expect(over).not.toMatch(/Current|Since/);
  });
  it("is nothing before there are readings", () => {
    expect(html(<FarFigures view={windows("planned", null)} />)).toBe("");
  });
});

describe("a strip without readings", () => {
  it("awaits none of a run that was abandoned", () => {
    expect(words(<TemperatureStrip view={windows("planned", null)} />)).toContain("No readings yet");
    expect(words(<TemperatureStrip view={windows("abandoned", null)} />)).not.toMatch(/yet|Once/);
  });
});

describe("the list of runs", () => {
  it("does not tell sensors as a part of customers", () => {
    const run = {
      ...{ number: "R-2026-0001", state: "planned", furnace: "FUR-01", performer: "T", startedAt: null },
      ...{ sensors: 6, customers: 2, setpointsCelsius: [300] },
    };
    const runs = [run] as unknown as RunsView["runs"];
    expect(words(<RunTable runs={runs} isAny />)).toContain("6, for 2 customers");
  });
});

describe("the results of a run", () => {
  it("stand under each other by their decimal marks", () => {
    const point = (errorCelsius: string) => ({
      state: "measured",
      printed: { errorCelsius, expandedCelsius: "0.96" },
      conformity: { state: "pass" },
      scope: { state: "inside" },
    });
    const view = {
      head: { number: "R-2026-0001", setpoints: [{ id: "a", position: 1, celsius: 300 }] },
      sensors: ["-0.19", "0.5"].map((error, index) => ({
        ...{ tag: `T-${index}`, serial: "", customer: "", type: "K" },
        points: [point(error)],
      })),
    } as unknown as RunResultsView;
    const page = html(<ResultTable view={view} />);
    expect(page.match(/min-width:2ch/g)).toHaveLength(2);
    expect(page.match(/min-width:2\.5ch/g)).toHaveLength(2);
    expect(page).toContain('<td role="cell" class="number"');
  });
});
