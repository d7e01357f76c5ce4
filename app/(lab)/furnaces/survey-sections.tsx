import { Section } from "@/app/_ui/section";
import { Timestamp } from "@/app/_ui/timestamp";
import { surveyKindLabels } from "@/lib/domain/furnace/survey-kinds";
import type { CharacterisationRunView } from "@/lib/views/characterisation-run";
import { SurveyFacts } from "./survey-facts";
import { SurveyFigure } from "./survey-figure";

/** Each survey that counts, drawn and in numbers, from the coolest temperature up. */
export function SurveySections({ view }: { readonly view: CharacterisationRunView }) {
  const surveys = view.table.flatMap(({ cells }) => cells.flatMap(({ survey }) => survey ?? []));
  return (
    <>
      {surveys.map((survey) => (
        <Section
          key={survey.id}
          id={`survey-${survey.id}`}
          title={`${surveyKindLabels[survey.kind]} at ${survey.celsius} °C`}
          note={
            <>
              Measured <Timestamp at={survey.measuredOn} precision="day" />
              {survey.isFromFile ? ", from its file" : ", typed"}
            </>
          }
        >
          <SurveyFigure
            plan={view.plan}
            celsius={survey.celsius}
            readings={survey.readings}
            evaluation={survey.evaluation}
            bores={view.configuration.bores}
            boreMillimetre={view.furnace.boreMillimetre}
          />
          <SurveyFacts evaluation={survey.evaluation} />
        </Section>
      ))}
    </>
  );
}
