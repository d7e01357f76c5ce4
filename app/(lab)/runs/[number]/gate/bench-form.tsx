import { ActionForm } from "@/app/_ui/action-form.client";
import { FieldGroup } from "@/app/_ui/field-group";
import { NumberField } from "@/app/_ui/number-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import type { RunGateView } from "@/lib/views/run/run-gate";
import { benchChecksAction } from "./actions";
import { ChannelCells, JunctionCells } from "./bench-tables";

const recorded = (value: number | null, unit: string): string =>
  value === null ? "Not recorded today." : `Recorded today: ${value} ${unit}.`;

/** The bench before the run, from warm-up to the junctions; what is left empty stays as it was recorded. */
export function BenchForm({ view }: { readonly view: RunGateView }) {
  const { bench, head, thermometers } = view;
  const { limits, voltagePoint } = bench;
  return (
    <ActionForm action={benchChecksAction} shape="wide" label="Same-day checks">
      <input type="hidden" name="run" value={head.number} />
      <FieldGroup legend="Voltmeter and scanner">
        <div className="fields">
          <NumberField
            name="warmUpHours"
            label="Switched on for"
            unit="h"
            optional
            hint={`At least ${limits.warmUpHours} h. ${recorded(bench.warmUpHours, "h")}`}
          />
          <NumberField
            name="shortedZeroMicrovolt"
            label="Voltmeter shorted"
            unit="µV"
            optional
            hint={`Within ± ${limits.shortedZeroMicrovolt} µV. ${recorded(bench.shortedZeroMicrovolt, "µV")}`}
          />
        </div>
        <div className="fields">
          <NumberField
            name="voltagePoint.appliedMicrovolt"
            label="Voltage check point applied"
            unit="µV"
            optional
            hint={
              voltagePoint
                ? `Recorded today: ${voltagePoint.appliedMicrovolt} µV.`
                : "A known voltage in the range of the run."
            }
          />
          <NumberField
            name="voltagePoint.readMicrovolt"
            label="Voltmeter reads"
            unit="µV"
            optional
            hint={`Within ± ${limits.voltagePointMicrovolt} µV. ${recorded(voltagePoint?.readMicrovolt ?? null, "µV")}`}
          />
        </div>
      </FieldGroup>
      <FieldGroup
        legend="Every channel, shorted"
        hint="Noble metal within ± 1 µV, base metal as the policy says."
      >
        <ChannelCells channels={bench.channels} />
      </FieldGroup>
      <FieldGroup
        legend="Reference junctions, by thermometer"
        hint={`Within ± ${limits.junctionCelsius} °C of what the run states.`}
      >
        {thermometers.length === 0 ? (
          <p className="quiet">No thermometer is in service. Record one under Standards.</p>
        ) : (
          <JunctionCells junctions={bench.junctions} thermometers={thermometers} />
        )}
      </FieldGroup>
      <div className="form-actions">
        <SubmitButton size="bench">Record these checks</SubmitButton>
      </div>
    </ActionForm>
  );
}
