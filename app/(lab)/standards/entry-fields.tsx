import { ChoiceField } from "@/app/_ui/choice-field.client";
import { DateField } from "@/app/_ui/date-field.client";
import { NumberField } from "@/app/_ui/number-field.client";
import { SelectField } from "@/app/_ui/select-field.client";
import { TextField } from "@/app/_ui/text-field.client";
import type { EntryFigures } from "@/lib/domain/equipment/logbook";

/** What was checked before, the last of each quantity. */
export type Check = { readonly quantity: string; readonly unit: string; readonly limit: number | undefined };

type Kind = EntryFigures["kind"];

const checkUnits = ["°C", "µV", "Ω"].map((value) => ({ value, label: value }));

/** What is compared keeps its words, or its points stand on two charts. */
function CheckFields({ checks }: { readonly checks: readonly Check[] }) {
  const last = checks[0];
  return (
    <>
      <TextField
        name="figures.quantity"
        label="What was compared with what"
        hint={
          last
            ? `In the same words as before: ${checks.map(({ quantity }) => quantity).join("; ")}.`
            : "Such as REF-S-01 at 1000 °C. The same words each time: they name the chart."
        }
        defaultValue={last?.quantity}
      />
      <NumberField name="figures.expected" label="Expected" />
      <NumberField name="figures.found" label="Found" />
      <NumberField
        name="figures.limit"
        label="Still passes within ±"
        hint="It is judged by this, at once."
        defaultValue={last?.limit}
      />
      <SelectField
        name="figures.unit"
        label="Unit"
        prompt="Choose the unit"
        choices={checkUnits}
        defaultValue={last?.unit}
      />
    </>
  );
}

function AnnealFields() {
  return (
    <>
      <SelectField
        name="figures.method"
        label="How"
        prompt="Choose how it was annealed"
        choices={[
          { value: "furnace", label: "Assembled, in a furnace at full immersion" },
          { value: "electrical", label: "Bare wires, by current in air" },
        ]}
      />
      <NumberField name="figures.celsius" label="At" unit="°C" />
      <NumberField name="figures.hours" label="For" unit="h" />
      <NumberField name="figures.thenCelsius" label="Then held at" unit="°C" optional />
      <NumberField name="figures.thenHours" label="Then for" unit="h" optional />
    </>
  );
}

const outcome = (
  <ChoiceField
    name="outcome"
    legend="Outcome"
    choices={[
      { value: "passed", label: "Passed: it is what was asked for" },
      { value: "failed", label: "Failed" },
    ]}
  />
);

/** The figures of one kind of entry. */
export function EntryFields({ kind, checks }: { readonly kind: Kind; readonly checks: readonly Check[] }) {
  switch (kind) {
    case "verification":
      return (
        <>
          <TextField
            name="figures.against"
            label="Held against"
            hint="Its order, its data sheet, or our requirement for it."
          />
          {outcome}
        </>
      );
    case "intermediate-check":
    case "check-after-anneal":
      return <CheckFields checks={checks} />;
    case "maintenance":
      return (
        <SelectField
          name="figures.plan"
          label="Was it planned"
          prompt="Choose"
          choices={[
            { value: "planned", label: "Planned" },
            { value: "unplanned", label: "Not planned" },
          ]}
        />
      );
    case "damage":
      return (
        <DateField
          name="figures.soundOn"
          label="Last day on which it was sound"
          hint="Results since then are in doubt. Left empty: since its last check or calibration."
          optional
        />
      );
    case "repair":
      return <TextField name="figures.by" label="Done by" hint="The workshop or the firm." />;
    case "adjustment":
      return (
        <>
          <TextField name="figures.quantity" label="What was adjusted" />
          <NumberField name="figures.before" label="Before" />
          <NumberField name="figures.after" label="After" />
          <TextField name="figures.unit" label="Unit" />
        </>
      );
    case "anneal":
      return <AnnealFields />;
    case "move":
      return <TextField name="figures.to" label="Where it is now" />;
    case "note":
      return null;
  }
}
