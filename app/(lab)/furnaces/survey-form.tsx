import { ActionForm } from "@/app/_ui/action-form.client";
import { DateField } from "@/app/_ui/date-field.client";
import { FileField } from "@/app/_ui/file-field.client";
import { NumberField } from "@/app/_ui/number-field.client";
import { SelectField } from "@/app/_ui/select-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import { type SurveyKind, surveyKindLabels } from "@/lib/domain/furnace/survey-kinds";
import type { CharacterisationRunView } from "@/lib/views/characterisation-run";
import { recordSurveyAction } from "./actions";
import { RowGrid } from "./row-grid.client";
import { surveyColumns, surveyLines, surveyLinesFor } from "./survey-columns";
import { SurveyPreview } from "./survey-preview.client";

type Props = {
  readonly view: CharacterisationRunView;
  readonly kind: SurveyKind;
  readonly celsius: number;
  readonly today: string;
};

const how: Readonly<Record<SurveyKind, string>> = {
  axial:
    "Move the probe from stop to stop and back again, the monitor at rest; wait at each stop until both are steady. Going back shows how well a reading repeats, and takes the drift out.",
  positions:
    "Read every thermocouple at its position, then exchange them and read again, and once more. Their own differences cancel: a survey without exchange is refused.",
  stability: "Read the monitor for at least one measuring window, nothing moved and the door closed.",
  immersion:
    "Read the probe at several depths, the monitor at rest. In a furnace hotter than the room the best depth reads highest.",
};

const fileColumns: Readonly<Record<SurveyKind, string>> = {
  axial: "position_mm, probe_uV, monitor_uV and, if read, minutes",
  immersion: "depth_mm, probe_uV, monitor_uV and, if read, minutes",
  positions: "arrangement, place, sensor, reading_uV",
  stability: "minutes, monitor_uV",
};

/** The positions of the load: a block's bores by number, or five of a bundle. */
const placesOf = ({ configuration }: CharacterisationRunView): readonly string[] =>
  configuration.bores.length > 1
    ? configuration.bores.map(({ number }) => number)
    : ["centre", "top", "right", "bottom", "left"];

export function SurveyForm({ view, kind, celsius, today }: Props) {
  const places = placesOf(view);
  return (
    <ActionForm action={recordSurveyAction} shape="wide" label={`${surveyKindLabels[kind]} at ${celsius} °C`}>
      <input type="hidden" name="characterisationRunId" value={view.id} />
      <input type="hidden" name="celsius" value={celsius} />
      <input type="hidden" name="kind" value={kind} />
      <p>{how[kind]}</p>
      <div className="fields">
        <DateField name="measuredOn" label="Measured on" defaultValue={today} />
        <SelectField
          name="readings.unit"
          label="Readings in"
          choices={[
            { value: "microvolt", label: "µV" },
            { value: "celsius", label: "°C" },
          ]}
        />
        <NumberField
          name="readings.junctionCelsius"
          label="Reference junction"
          unit="°C"
          defaultValue={0}
          hint="Counts for readings in µV."
        />
        {kind === "positions" ? (
          <TextField
            name="readings.centre"
            label="Compared with the position"
            defaultValue={places[0]}
            hint="The middle, or where the references stand."
          />
        ) : null}
        {kind === "immersion" ? (
          <NumberField
            name="readings.limitCelsius"
            label="A depth is good within"
            unit="°C"
            defaultValue="0.3"
            hint="of the best depth."
          />
        ) : null}
      </div>
      <SurveyPreview
        plan={view.plan}
        celsius={celsius}
        kind={kind}
        bores={view.configuration.bores}
        boreMillimetre={view.furnace.boreMillimetre}
      />
      <RowGrid
        name="readings.rows"
        legend="Line by line"
        hint="What is known is written in; change it where it was done otherwise. Lines without a reading at the end are left out."
        line={surveyLines[kind]}
        columns={surveyColumns[kind]}
        rows={surveyLinesFor(kind, view.plan, places)}
      />
      <FileField
        name="file"
        label="Or a file instead of the lines"
        accept=".csv,text/csv"
        optional
        hint={`A table with the columns ${fileColumns[kind]}; with _C for _uV where the readings are in °C.`}
      />
      <div className="form-actions">
        <SubmitButton>Record the survey</SubmitButton>
      </div>
    </ActionForm>
  );
}
