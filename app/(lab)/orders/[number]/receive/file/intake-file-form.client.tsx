"use client";
import { type FormEvent, type ReactNode, useActionState, useState } from "react";
import { DateField } from "@/app/_ui/date-field.client";
import { FileField } from "@/app/_ui/file-field.client";
import { FormStateProvider } from "@/app/_ui/form-context.client";
import { FormMessage } from "@/app/_ui/form-message";
import { Notice } from "@/app/_ui/notice";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { ProblemList } from "@/app/(lab)/standards/[id]/calibrations/problem-list.client";
import { intakeFileAction } from "./actions";
import type { IntakeState, LookedAt } from "./intake-state";
import { PreviewTable } from "./preview-table";

type Props = {
  readonly orderNumber: string;
  readonly longestBytes: number;
  /** YYYY-MM-DD */
  readonly today: string;
  /** What is asked before the list is read. */
  readonly children: ReactNode;
};

const outsideIn = ({ preview }: LookedAt): number =>
  preview.groups.flatMap(({ sensors }) => sensors).filter(({ outside }) => outside.length > 0).length;

const twiceIn = ({ preview }: LookedAt): number =>
  preview.groups.flatMap(({ sensors }) => sensors).filter(({ stillHereAs }) => stillHereAs).length;

type LookedProps = { readonly looked: LookedAt; readonly today: string };

const Looked = ({ looked, today }: LookedProps) => {
  const outside = outsideIn(looked);
  const twice = twiceIn(looked);
  return (
    <>
      <input type="hidden" name="keptName" value={looked.fileName} />
      <input type="hidden" name="keptBytes" value={looked.base64} />
      <input type="hidden" name="position" value={looked.position} />
      <p role="status">
        {looked.fileName} ({looked.preview.format}) was read: {looked.preview.count} sensors
        {outside > 0 ? `, ${outside} outside the limits of intake` : ""}
        {twice > 0 ? `, ${twice} whose serial is still here under another label` : ""}. Nothing is stored yet.
      </p>
      {looked.preview.oneEnd.length > 0 ? (
        <Notice kind="caution" title="One end of a roll alone">
          {`Both ends of a roll are reported: ${looked.preview.oneEnd.join("; ")}. No certificate is signed for them until the other end is here, or the customer agreed to one end.`}
        </Notice>
      ) : null}
      {looked.preview.groups.map((group) => (
        <PreviewTable key={group.position} group={group} />
      ))}
      <DateField name="receivedOn" label="Received on" defaultValue={today} />
      <div className="form-actions">
        <SubmitButton name="step" value="store">
          Take in {looked.preview.count} sensors
        </SubmitButton>
        <SubmitButton name="step" value="again" kind="quiet">
          Choose another file
        </SubmitButton>
      </div>
    </>
  );
};

/** A list is looked at first; what was looked at, byte for byte, is what is taken in. */
export function IntakeFileForm({ orderNumber, longestBytes, today, children }: Props) {
  const [state, submit] = useActionState(intakeFileAction, {
    form: { status: "idle" },
    looked: null,
  } as IntakeState);
  const [tooLarge, setTooLarge] = useState("");
  const beforeSending = (event: FormEvent<HTMLFormElement>) => {
    const file = new FormData(event.currentTarget).get("file");
    const isTooLarge = file instanceof File && file.size > longestBytes;
    // Refused here: so large a file would not even arrive.
    if (isTooLarge) event.preventDefault();
    setTooLarge(
      isTooLarge
        ? `“${file.name}” has ${(file.size / 1_000_000).toFixed(1)} MB; a list of 200 sensors has less than ${longestBytes / 1_000_000} MB. Nothing was sent.`
        : "",
    );
  };
  const message: IntakeState["form"] = tooLarge
    ? { status: "refused", message: tooLarge, fields: {}, values: {} }
    : state.form;
  return (
    <form
      action={submit}
      onSubmit={beforeSending}
      className="form form-wide"
      aria-label="Take sensors in from a file"
      noValidate
    >
      <FormStateProvider value={message}>
        <FormMessage state={message} />
        <ProblemList />
        <input type="hidden" name="orderNumber" value={orderNumber} />
        {state.looked ? (
          <Looked looked={state.looked} today={today} />
        ) : (
          <>
            {children}
            <FileField
              name="file"
              label="The list"
              accept=".csv,.xlsx,text/csv,application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"
              hint="CSV or XLSX, its first sheet. At most 200 sensors, 1 MB."
            />
            <div className="form-actions">
              <SubmitButton name="step" value="look">
                Look at the list
              </SubmitButton>
            </div>
          </>
        )}
      </FormStateProvider>
    </form>
  );
}
