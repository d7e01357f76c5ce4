import Link from "next/link";
import { ActionForm } from "@/app/_ui/action-form.client";
import { DateField } from "@/app/_ui/date-field.client";
import { Disclosure } from "@/app/_ui/disclosure";
import { DrawingFigure } from "@/app/_ui/drawing/drawing-figure";
import { LinkButton } from "@/app/_ui/link-button";
import { NumberField } from "@/app/_ui/number-field.client";
import { Section } from "@/app/_ui/section";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { configurationKindLabels } from "@/lib/domain/furnace/labels";
import { boreSection } from "@/lib/drawing/bore-section";
import type { ConfigurationView } from "@/lib/views/furnace";
import { recordCharacterisationAction } from "./actions";
import { CharacterisationList } from "./characterisation-list";
import { CharacterisationMark } from "./characterisation-mark";
import { OrdersNote } from "./orders-note";
import { RunStateMark } from "./run-state-mark";

type Props = {
  readonly furnaceId: string;
  readonly boreMillimetre: number;
  readonly configuration: ConfigurationView;
  readonly mayChange: boolean;
};

function Facts({ configuration }: Pick<Props, "configuration">) {
  const { kind, places, immersionMillimetre, bundleDiameterMillimetre } = configuration;
  return (
    <p>
      {configurationKindLabels[kind]}, {places} places, immersion {immersionMillimetre} mm
      {bundleDiameterMillimetre ? `, bundle up to ${bundleDiameterMillimetre} mm thick` : ""}
    </p>
  );
}

function Measuring({ furnaceId, configuration, mayChange }: Omit<Props, "boreMillimetre">) {
  return (
    <>
      {configuration.runs.length > 0 ? (
        <ul className="list">
          {configuration.runs.map((run) => (
            <li key={run.id} className="row">
              <Link href={`/furnaces/${furnaceId}/characterisations/${run.id}`}>{run.number}</Link>
              <RunStateMark state={run.state} />
            </li>
          ))}
        </ul>
      ) : null}
      {mayChange ? (
        <div>
          <LinkButton href={`/furnaces/${furnaceId}/characterisations/new?configuration=${configuration.id}`}>
            Plan a characterisation
          </LinkButton>
        </div>
      ) : null}
    </>
  );
}

/** One way the furnace is used: what it is, what it was found to be, and what is being measured. */
export function ConfigurationSection({ furnaceId, boreMillimetre, configuration, mayChange }: Props) {
  const { name, bores, kind } = configuration;
  return (
    <Section title={name} note={<CharacterisationMark due={configuration.due} />}>
      <Facts configuration={configuration} />
      {bores.length > 0 ? (
        <DrawingFigure
          drawing={boreSection({ title: `Bores of ${name}`, boreMillimetre, bores }, 420)}
          narrow={boreSection({ title: `Bores of ${name}`, boreMillimetre, bores }, 340)}
        />
      ) : null}
      <CharacterisationList furnaceId={furnaceId} configuration={configuration} />
      <OrdersNote kind={kind} />
      <Measuring furnaceId={furnaceId} configuration={configuration} mayChange={mayChange} />
      {mayChange ? (
        <Disclosure summary="Type one figure from a report instead">
          <TypedForm configurationId={configuration.id} name={name} />
        </Disclosure>
      ) : null}
    </Section>
  );
}

function TypedForm({ configurationId, name }: { readonly configurationId: string; readonly name: string }) {
  return (
    <ActionForm action={recordCharacterisationAction} label={`Record a characterisation of ${name}`}>
      <input type="hidden" name="configurationId" value={configurationId} />
      <DateField name="performedOn" label="Measured on" />
      <DateField name="validUntil" label="Valid until" />
      <NumberField
        name="uniformityHalfWidthCelsius"
        label="Any place against the references’ mean, half-width"
        unit="°C"
        hint="Half the full range, along and across together."
      />
      <TextArea
        name="statement"
        label="What it means"
        hint="Over which length, at which temperatures, and that it is the half-width: without these the figure means nothing."
        rows={3}
      />
      <div className="form-actions">
        <SubmitButton kind="quiet">Record the characterisation</SubmitButton>
      </div>
    </ActionForm>
  );
}
