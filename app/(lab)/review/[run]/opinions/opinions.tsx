import { ActionForm } from "@/app/_ui/action-form.client";
import { Disclosure } from "@/app/_ui/disclosure";
import { Notice } from "@/app/_ui/notice";
import { Section } from "@/app/_ui/section";
import { SelectField } from "@/app/_ui/select-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { TextField } from "@/app/_ui/text-field.client";
import { Timestamp } from "@/app/_ui/timestamp";
import { intervalCaution, speaksOfInterval } from "@/lib/domain/review/speaks-of-interval";
import { type OpinionsPage, opinionsView } from "@/lib/views/opinions";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { takeOpinionBackAction, writeOpinionAction } from "./actions";

type Props = { readonly page: OpinionsPage };
type Sensor = OpinionsPage["sensors"][number];

function Place({ page, sensor }: Props & { readonly sensor?: Sensor }) {
  return (
    <>
      <input type="hidden" name="runId" value={page.runId} />
      <input type="hidden" name="evaluationId" value={page.evaluationId} />
      {sensor ? <input type="hidden" name="sensorId" value={sensor.id} /> : null}
    </>
  );
}

function Standing({ page, sensor }: Props & { readonly sensor: Sensor }) {
  if (!sensor.opinion) return null;
  return (
    <li>
      <strong>{sensor.tag}</strong>: {sensor.opinion.text}
      <div className="quiet">
        Rests on: {sensor.opinion.basis} ({sensor.opinion.by},{" "}
        <Timestamp at={sensor.opinion.at} precision="minute" />)
      </div>
      {sensor.isOpen && speaksOfInterval(`${sensor.opinion.text} ${sensor.opinion.basis}`) ? (
        <Notice kind="caution" title="A recalibration interval?">
          {intervalCaution}
        </Notice>
      ) : null}
      {page.mayWrite && sensor.isOpen ? (
        <Disclosure summary={`Take the opinion on ${sensor.tag} back`}>
          <ActionForm action={takeOpinionBackAction} label={`Take the opinion on ${sensor.tag} back`}>
            <Place page={page} sensor={sensor} />
            <TextField name="reason" label="Why" maxLength={1000} />
            <div className="form-actions">
              <SubmitButton kind="quiet">Take it back</SubmitButton>
            </div>
          </ActionForm>
        </Disclosure>
      ) : null}
    </li>
  );
}

function WriteForm({ page }: Props) {
  const open = page.sensors.filter(({ isOpen }) => isOpen);
  if (!page.mayWrite || open.length === 0) return null;
  return (
    <Disclosure summary="Write an opinion or interpretation">
      <ActionForm action={writeOpinionAction} label="Write an opinion">
        <Place page={page} />
        <SelectField
          name="sensorId"
          label="Sensor"
          prompt="Choose the sensor"
          choices={open.map(({ id, tag, serial }) => ({ value: id, label: `${tag}, ${serial}` }))}
        />
        <TextArea
          name="text"
          label="Opinion"
          hint="Printed apart from the results, marked as an opinion, with your name and the day. It takes the place of an earlier one. No recalibration interval, unless agreed with the customer (7.8.4.3)."
          rows={3}
        />
        <TextArea name="basis" label="What it rests on" hint="Printed with it." rows={2} />
        <p className="field-hint">You are authorised for {page.authorisedFor.join("; for ")}.</p>
        <div className="form-actions">
          <SubmitButton kind="quiet">Write it</SubmitButton>
        </div>
      </ActionForm>
    </Disclosure>
  );
}

/** Nothing where there is none and none can be written. */
export async function Opinions({ run }: { readonly run: string }) {
  const page = await load(opinionsView(await requirePermission("review.read"), run, new Date()));
  const standing = page.sensors.filter(({ opinion }) => opinion);
  if (standing.length === 0 && !page.mayWrite) return null;
  return (
    <Section
      title="Opinions"
      id="opinions"
      note="Interpretations, no results: marked as such on the certificate."
    >
      {standing.length > 0 ? (
        <ul className="plain-list">
          {standing.map((sensor) => (
            <Standing key={sensor.id} page={page} sensor={sensor} />
          ))}
        </ul>
      ) : null}
      <WriteForm page={page} />
    </Section>
  );
}
