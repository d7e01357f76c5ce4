import { ActionForm } from "@/app/_ui/action-form.client";
import { DataTable } from "@/app/_ui/data-table";
import { DateField } from "@/app/_ui/date-field.client";
import { Disclosure } from "@/app/_ui/disclosure";
import { EmptyState } from "@/app/_ui/empty-state";
import { StateMark } from "@/app/_ui/state-mark";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TypeLetter } from "@/app/_ui/type-letter";
import type { ScopeView } from "@/lib/views/scope";
import { endScopeLineAction } from "./actions";

type Line = ScopeView["lines"][number];

const marks = {
  "in-force": <StateMark state="done" label="In force" />,
  "to-come": <StateMark state="open" label="To come" />,
  ended: <StateMark state="cancelled" label="Ended" />,
} as const;

function EndForm({ line, today }: { readonly line: Line; readonly today: string }) {
  return (
    <Disclosure summary="End it">
      <ActionForm
        action={endScopeLineAction}
        label={`End the line of type ${line.typeLetter} from ${line.fromCelsius} °C`}
      >
        <input type="hidden" name="id" value={line.id} />
        <input type="hidden" name="version" value={line.version} />
        <DateField
          name="lastDay"
          label="Its last day"
          hint="Today at the earliest. It cannot be taken back."
          defaultValue={today}
        />
        <div className="form-actions">
          <SubmitButton>End the line</SubmitButton>
        </div>
      </ActionForm>
    </Disclosure>
  );
}

/** Every line there ever was, with its days; open ones can be ended by those who may. */
export function LineTable({ view }: { readonly view: ScopeView }) {
  return (
    <DataTable
      caption="Lines of the scope"
      captionUnseen
      columns={[
        { key: "type", header: "Type" },
        { key: "range", header: "Range", unit: "°C" },
        { key: "capability", header: "Capability U" },
        { key: "days", header: "In force" },
        { key: "source", header: "Schedule" },
        { key: "standing", header: "State" },
      ]}
      rows={view.lines.map((line) => ({
        key: line.id,
        cells: {
          type: <TypeLetter letter={line.typeLetter} />,
          range: `${line.fromCelsius} to ${line.toCelsius}`,
          capability: line.capability,
          days: line.validUntil ? `${line.validFrom} to ${line.validUntil}` : `from ${line.validFrom}`,
          source: line.source,
          standing: (
            <>
              {marks[line.standing]}
              {view.mayRecord && view.isToday && line.validUntil === null ? (
                <EndForm line={line} today={view.day} />
              ) : null}
            </>
          ),
        },
      }))}
      empty={
        <EmptyState title="No scope is recorded">
          A laboratory without accreditation needs none: its certificates then claim nothing.
        </EmptyState>
      }
    />
  );
}
