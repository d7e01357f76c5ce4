"use client";
import { useState } from "react";
import { Disclosure } from "@/app/_ui/disclosure";
import { workPlaceLabels, workPlaces } from "@/lib/domain/order/line-marks";
import {
  contentFormLabels,
  contentForms,
  countingRuleLabels,
  countingRules,
  measuredSetLabels,
  measuredSets,
  reportFormLabels,
  reportForms,
  reportLanguageLabels,
  reportLanguages,
} from "@/lib/domain/order/options";
import { LineControl } from "./line-control.client";
import { emptyLine, type LineDraft, type LineField, optionFields } from "./line-draft";
import { LineTick } from "./line-tick.client";

export type Providers = readonly { readonly id: string; readonly name: string }[];

type Field = {
  readonly name: string;
  readonly value: string;
  readonly error: string | undefined;
  readonly onChange: (value: string) => void;
};

type Props = {
  readonly line: LineDraft;
  readonly errors: Readonly<Partial<Record<LineField, string>>>;
  readonly field: (name: LineField) => Field;
  readonly providers: Providers;
};

const choicesOf = <T extends string>(values: readonly T[], labels: Readonly<Record<T, string>>) =>
  values.map((value) => ({ value, label: labels[value] }));

const setChoices = choicesOf(measuredSets, measuredSetLabels);
const reportChoices = choicesOf(reportForms, reportFormLabels);
const countingChoices = choicesOf(countingRules, countingRuleLabels);
const languageChoices = choicesOf(reportLanguages, reportLanguageLabels);
const formChoices = choicesOf(contentForms, contentFormLabels);
const placeChoices = choicesOf(workPlaces, workPlaceLabels);

const Reporting = ({ field, unitName }: Pick<Props, "field"> & { readonly unitName: string }) => (
  <>
    <LineControl
      {...field("countingRule")}
      label="If a sensor is measured again"
      choices={countingChoices}
      hint="Fixed before the second measurement."
    />
    <div className="fields">
      <LineControl
        {...field("report")}
        label="Reported as"
        choices={reportChoices}
        hint="A lot larger than a furnace load gets one certificate for each run: part 1, part 2."
      />
      <LineControl
        {...field("tableStep")}
        label="Table of corrections, every"
        optional
        hint={`In ${unitName}; left empty, none. It ends at the outermost setpoints.`}
      />
    </div>
    <div className="fields">
      <LineControl
        {...field("language")}
        label="Language of the certificate"
        choices={languageChoices}
        hint="Of two, the English binds. What people wrote is not translated."
      />
      <LineControl
        {...field("form")}
        label="Full or simplified"
        choices={formChoices}
        hint="Simplified leaves out conditions, budgets and the function (7.8.1.3)."
      />
      <LineControl
        {...field("formAgreement")}
        label="Simplified as agreed in"
        optional
        hint="A letter, a contract, or who agreed and when."
      />
    </div>
    <LineTick {...field("coefficients")} label="Coefficients of the deviation function" />
    <LineTick {...field("budget")} label="Uncertainty budget on the certificate" />
    <LineTick {...field("evidence")} label="Evidence file attached" />
  </>
);

const Where = ({ field, providers }: Pick<Props, "field" | "providers">) => (
  <div className="fields">
    <LineControl {...field("performedAt")} label="Done" choices={placeChoices} />
    <LineControl
      {...field("siteAddress")}
      label="Address of the site"
      optional
      hint="Where it is done at the customer’s."
    />
    <LineControl
      {...field("providerId")}
      label="Subcontracted to"
      optional
      choices={[
        { value: "", label: "Nobody: done by us" },
        ...providers.map(({ id, name }) => ({ value: id, label: name })),
      ]}
      hint="Approved providers only; the customer is told."
    />
  </div>
);

/** What a line asks for beyond its points: folded away while it asks for nothing. */
export function LineOptionsFields({ line, errors, field, providers }: Props) {
  // As it was when the row was drawn: it must not fold under the hands of whoever empties a field.
  const [isOpen] = useState(() =>
    optionFields.some((name) => errors[name] !== undefined || line[name] !== emptyLine[name]),
  );
  return (
    <Disclosure summary="Group, options and where it is done" open={isOpen}>
      <div className="stack">
        <LineControl
          {...field("groupName")}
          label="Name of the group"
          optional
          hint="As the customer calls these sensors, e.g. zone 3, load thermocouples."
        />
        <LineControl {...field("sets")} label="Measured" choices={setChoices} />
        <div className="fields">
          <LineControl
            {...field("annealCelsius")}
            label="Annealed at"
            optional
            hint="In °C. Hot work: the procedure and the furnace maker’s manual say how."
          />
          <LineControl {...field("annealHours")} label="For" optional hint="In hours." />
        </div>
        <Reporting field={field} unitName={line.temperatureUnit === "F" ? "°F" : "°C"} />
        <Where field={field} providers={providers} />
      </div>
    </Disclosure>
  );
}
