import { readFileSync } from "node:fs";
import { createElement, type ReactElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, it } from "vitest";
import { CheckboxField } from "@/app/_ui/checkbox-field.client";
import { DataTable } from "@/app/_ui/data-table";
import { decimalRoom } from "@/app/_ui/decimal-room";
import { BudgetChart } from "@/app/_ui/drawing/budget-chart";
import { FormStateProvider } from "@/app/_ui/form-context.client";
import { LabShell } from "@/app/_ui/lab-shell";
import { Quantity } from "@/app/_ui/quantity";
import { SelectField } from "@/app/_ui/select-field.client";
import { StateMark } from "@/app/_ui/state-mark";
import { TextField } from "@/app/_ui/text-field.client";
import { Timestamp } from "@/app/_ui/timestamp";
import { TypeLetter } from "@/app/_ui/type-letter";
import type { FormState } from "@/lib/web/form-state";

const html = (element: ReactElement) => renderToStaticMarkup(element);
const words = (element: ReactElement) => html(element).replaceAll(/<[^>]+>/g, "");

describe("a quantity", () => {
  it("reads value ± U unit with a true minus and a space that does not break", () => {
    expect(words(<Quantity value="-0.50" uncertainty="1.3" unit="°C" />)).toBe("\u22120.50 ± 1.3\u00a0°C");
  });
  it("says the same when its decimal marks are aligned", () => {
    const align = decimalRoom(["-12.05", "3", null]);
    expect(align).toEqual({ integer: 3, fraction: 2 });
    expect(words(<Quantity value="3" align={align} />)).toBe("3");
  });
});

describe("marks", () => {
  it("give a state its word, and an unknown state its own", () => {
    expect(words(<StateMark state="not-decidable" />)).toBe("Not decidable");
    expect(words(<StateMark state="in-the-post" />)).toBe("in the post");
    expect(words(<StateMark state="constructor" />)).toBe("constructor");
  });
  it("name the insulation colour of a type", () => {
    expect(html(<TypeLetter letter="N" />)).toContain("Type N, pink (IEC 60584-3)");
  });
  it("set a time in UTC whatever the zone, and leave a date a date", () => {
    expect(words(<Timestamp at="2026-03-04T01:12:00+02:00" />)).toBe("2026-03-03 23:12 UTC");
    expect(words(<Timestamp at="2026-03-04" />)).toBe("2026-03-04");
  });
});

describe("a table", () => {
  it("names every cell's column with its unit, for 390 px and for screen readers", () => {
    const page = html(
      <DataTable
        caption="Results"
        columns={[
          { key: "n", header: "Nominal" },
          { key: "e", header: "Error", unit: "°C", align: "number" },
        ]}
        rows={[{ key: "1", cells: { n: "300", e: "1.2" } }]}
      />,
    );
    expect(page).toContain('data-label="Error, °C"');
    expect(page).toContain('scope="row"');
    expect(page).toContain("<caption>Results</caption>");
  });
  it("does not break a number, a tag or a day, but a sentence", () => {
    const cells = {
      a: "C-2026-0001",
      b: "2026-11-25 13:05 UTC",
      c: "Reference REF-S-01",
      d: "The sheath is bent",
    };
    const columns = Object.keys(cells).map((key) => ({ key, header: key }));
    const page = html(<DataTable caption="Of words" columns={columns} rows={[{ key: "1", cells }]} />);
    const unbroken = [...page.matchAll(/"cell cell-word">([^<]+)/g)].map(([, text]) => text);
    expect(unbroken).toEqual(["C-2026-0001", "2026-11-25 13:05 UTC", "Reference REF-S-01"]);
  });
  it("sets its sum under its column", () => {
    expect(readFileSync("app/_ui/css/table.css", "utf8")).toContain(".table :is(tbody, tfoot) .number {");
  });
  it("comes with each drawing", () => {
    const view = {
      title: "Budget",
      unit: "µV",
      contributions: [{ key: "a", label: "Lead", effect: 2 }],
      combined: 2,
    };
    const page = html(<BudgetChart view={view} />);
    expect(page).toContain('role="img"');
    expect(page).toContain("<caption>Budget</caption>");
  });
});

describe("a field after a refusal", () => {
  const refused: FormState = {
    status: "refused",
    message: "Not saved.",
    fields: { customer: "Give the customer's name." },
    values: { customer: "Nord", furnace: "b", checks: ["x"] },
  };
  const within = (state: FormState, field: ReactElement) =>
    html(createElement(FormStateProvider, { value: state }, field));

  it("keeps what was typed, and ties its error to its control", () => {
    const page = within(refused, <TextField name="customer" label="Customer" defaultValue="first" />);
    expect(page).toContain('value="Nord"');
    expect(page).toContain('aria-invalid="true"');
    const described = /aria-describedby="([^"]+)"/.exec(page)?.[1];
    expect(page).toContain(`id="${described}"`);
    expect(page).toContain("Give the customer&#x27;s name.");
  });
  it("never gives a password back", () => {
    const state: FormState = { ...refused, values: { code: "hunter2" } };
    expect(within(state, <TextField name="code" label="Password" type="password" />)).not.toContain(
      "hunter2",
    );
  });
  it("keeps the choice of a select, and an unticked box unticked", () => {
    const choices = [
      { value: "a", label: "A" },
      { value: "b", label: "B" },
    ];
    expect(within(refused, <SelectField name="furnace" label="Furnace" choices={choices} />)).toContain(
      '<option value="b" selected="">',
    );
    expect(within(refused, <CheckboxField name="tick" label="Tick" defaultChecked />)).not.toContain(
      "checked",
    );
    expect(within(refused, <CheckboxField name="checks" value="x" label="X" />)).toContain("checked");
  });
});

describe("the rail", () => {
  it("shows each person only the places their roles open", () => {
    const desk = html(
      <LabShell name="B" roles={["front-desk"]}>
        page
      </LabShell>,
    );
    expect(desk).toContain('href="/orders"');
    expect(desk).not.toContain('href="/audit"');
    expect(desk).not.toContain('href="/staff"');
    expect(desk).toContain('href="#main"');
    expect(
      html(
        <LabShell name="Q" roles={["quality-manager"]}>
          page
        </LabShell>,
      ),
    ).toContain('href="/staff"');
  });
});
