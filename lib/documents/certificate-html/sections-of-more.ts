import type { CertificateContent, CertificateFunction } from "@/lib/domain/certificate/content";
import { functionPlot } from "@/lib/drawing/function-plot";
import { scientific } from "../certificate/scientific";
import { inLine, type Said, together } from "../certificate/words";
import { figure } from "./figure";
import { all, type Html } from "./html";
import { setHeading } from "./sections-of-item";
import { lines, part, type Spoken } from "./speak";
import { table } from "./table";

/** 7.8.4.1 d: what the annealing changed. */
export const changes = (page: Spoken): readonly Html[] =>
  (page.content.changes ?? []).map((change) => {
    const { caption, sentence } = page.words;
    const title = caption("changeByAnnealing", { tag: change.tag });
    return part(
      page,
      { caption: title },
      table(page, {
        caption: page.say(title),
        columns: [
          { header: caption("setpoint"), unit: caption("asOrdered"), cell: ({ setpoint }) => setpoint },
          { header: caption("change"), unit: ["°C"], isNumber: true, cell: (row) => row.changeCelsius },
          { header: ["U"], unit: ["°C"], isNumber: true, cell: (row) => row.expandedCelsius },
        ],
        rows: change.rows,
      }),
      lines(page, [sentence(change.statement)]),
    );
  });

export const lot = (page: Spoken): Html | null => {
  const { caption, sentence } = page.words;
  const of = page.content.lot;
  if (!of) return null;
  const celsius: Said = ["°C"];
  return part(
    page,
    { caption: caption("lot") },
    table(page, {
      caption: page.say(caption("lot")),
      columns: [
        { header: caption("setpoint"), unit: caption("asOrdered"), cell: ({ setpoint }) => setpoint },
        { header: caption("items"), isNumber: true, cell: ({ items }) => String(items) },
        ...(
          [
            ["averageError", "averageErrorCelsius"],
            ["smallest", "smallestErrorCelsius"],
            ["largest", "largestErrorCelsius"],
            ["halfRange", "halfRangeCelsius"],
          ] as const
        ).map(([header, field]) => ({
          ...{ header: caption(header), unit: celsius, isNumber: true },
          cell: (row: NonNullable<CertificateContent["lot"]>["rows"][number]) => row[field],
        })),
      ],
      rows: of.rows,
    }),
    lines(page, [sentence(of.statement)]),
  );
};

const functionFigure = ({ words, say }: Spoken, fitted: CertificateFunction): Html => {
  const { caption } = words;
  const { curve, points } = fitted.plot;
  const drawing = functionPlot({
    title: caption("function")[0],
    unit: "µV",
    quantity: "deviation",
    labels: { temperature: inLine(caption("temperatureAxis")), value: inLine(caption("deviationAxis")) },
    curve,
    points: points.map((point) => ({ ...point, residual: point.value - point.fitted })),
  });
  return figure(drawing, all(), say(caption("function.note", { factor: fitted.coverageFactor })));
};

const functionOf = (page: Spoken, fitted: CertificateFunction, title: Said): Html => {
  const { words, say } = page;
  const { caption, sentence } = words;
  const unit: Said = [fitted.unit];
  return part(
    page,
    { caption: title },
    functionFigure(page, fitted),
    lines(page, fitted.statements.map(sentence)),
    table(page, {
      caption: say(caption("coefficient")),
      columns: [
        { header: caption("coefficient"), cell: ({ power }) => `a${power}` },
        { header: caption("value"), isNumber: true, cell: ({ value }) => scientific(value) },
        { header: caption("unit"), cell: ({ unit: of }) => of },
      ],
      rows: fitted.coefficients,
    }),
    table(page, {
      caption: say(caption("correction")),
      columns: [
        { header: caption("temperature"), unit, isNumber: true, cell: ({ temperature }) => temperature },
        { header: caption("correction"), unit, isNumber: true, cell: ({ correction }) => correction },
        { header: ["U"], unit, isNumber: true, cell: ({ expanded }) => expanded },
        { header: caption("remark"), cell: ({ remark }) => say(sentence(remark)) },
      ],
      rows: fitted.rows,
    }),
  );
};

/** Of the one item; or of each item and set that has one, under its name. */
export const functions = (page: Spoken): readonly Html[] => {
  const { content, words } = page;
  const title = words.caption("function");
  if (!content.sets) return content.function ? [functionOf(page, content.function, title)] : [];
  return content.sets.flatMap((set) =>
    set.function ? [functionOf(page, set.function, together(": ", title, setHeading(page, set)))] : [],
  );
};

type Budget = NonNullable<CertificateContent["budgets"]>[number];

const budgetOf = (page: Spoken, { tag, setpoint, lines: of, ...rest }: Budget): Html => {
  const { words, say } = page;
  const { caption, sentence } = words;
  return all(
    table(page, {
      caption: say(caption("budgets.at", { tag, setpoint })),
      columns: [
        { header: caption("contribution"), cell: ({ label }) => say(sentence(label)) },
        { header: caption("distribution"), cell: ({ distribution }) => say(sentence(distribution)) },
        {
          ...{ header: caption("onTheError"), unit: ["u, °C"], isNumber: true },
          cell: ({ effectCelsius }) => effectCelsius,
        },
        { header: caption("share"), isNumber: true, cell: ({ share }) => share },
      ],
      rows: of,
    }),
    lines(page, [
      caption("budgets.note", {
        combined: rest.combinedCelsius,
        factor: rest.coverageFactor,
        degrees: rest.degreesOfFreedom,
      }),
    ]),
  );
};

export const budgets = (page: Spoken): Html | null =>
  page.content.budgets
    ? part(
        page,
        { caption: page.words.caption("budgets") },
        ...page.content.budgets.map((budget) => budgetOf(page, budget)),
      )
    : null;
