import { Fragment, type ReactNode } from "react";
import { AccreditationMark, type Mark } from "./accreditation-mark";
import { Budgets } from "./budgets";
import { Closing } from "./closing";
import { RuleAlone, StatementTables } from "./conformity-statement";
import { DeviationFigure, figureSets, SmallFigures } from "./deviation-figure";
import { FunctionSection, functionsOf } from "./function-section";
import { MethodAndConditions } from "./method-and-conditions";
import { isSimplified, type OnPaper, type Paper } from "./paper";
import { Particulars } from "./particulars";
import { ResultNotes, ResultTables } from "./results";
import { RollSummary } from "./rolls";
import { Changes, LotSummary, type ResultTable, tablesOf } from "./sets";
import { Standards } from "./standards";

export type Part = { readonly key: string; readonly part: ReactNode };

/** From as many sets on, each kind of table begins on a page of its own. */
const manySets = 6;
/** Lines of a table's heads, and of a page of tables, in rows; what is too much flows over to the next page. */
const rowsOfHead = 3.4;
const rowsOfPage = 38;
const figuresOfPage = 6;
const manyBudgets = 4;

/** As many tables as fit on a page, page by page. */
const pagesOf = (tables: readonly ResultTable[]): readonly (readonly ResultTable[])[] => {
  const pages: ResultTable[][] = [];
  let left = 0;
  for (const table of tables) {
    const needed = table.rows.length + rowsOfHead;
    const page = pages.at(-1);
    if (page && needed <= left) page.push(table);
    else {
      pages.push([table]);
      left = rowsOfPage;
    }
    left -= needed;
  }
  return pages;
};

const Rest = ({ paper }: OnPaper) => (
  <>
    {isSimplified(paper) ? null : (
      <>
        <MethodAndConditions paper={paper} />
        <Standards paper={paper} />
      </>
    )}
    <Closing paper={paper} />
  </>
);

/** Of many sets: an overview first, then page after page of each kind of table, each page laid out on its own. */
const ofMany = (paper: Paper, opening: ReactNode): readonly Part[] => {
  const { content } = paper;
  const pages = pagesOf(tablesOf(content));
  const drawn = isSimplified(paper) ? [] : figureSets(content);
  const figures = drawn.flatMap((_, at) =>
    at % figuresOfPage === 0 ? [drawn.slice(at, at + figuresOfPage)] : [],
  );
  return [
    {
      key: "opening",
      part: (
        <>
          {opening}
          <LotSummary paper={paper} />
          <RollSummary paper={paper} />
        </>
      ),
    },
    ...pages.map((tables, at) => ({
      key: `results ${at}`,
      part: (
        <>
          <ResultTables paper={paper} tables={tables} isFirst={at === 0} />
          {at === pages.length - 1 ? <ResultNotes paper={paper} /> : null}
          {at === pages.length - 1 && isSimplified(paper) ? <RuleAlone paper={paper} /> : null}
        </>
      ),
    })),
    ...(content.changes ? [{ key: "changes", part: <Changes paper={paper} /> }] : []),
    ...(content.conformity && !isSimplified(paper) ? pages : []).map((tables, at) => ({
      key: `statements ${at}`,
      part: <StatementTables paper={paper} tables={tables} isFirst={at === 0} />,
    })),
    ...figures.map((sets, at) => ({
      key: `figures ${at}`,
      part: <SmallFigures paper={paper} sets={sets} isFirst={at === 0} />,
    })),
  ];
};

const StatementsAndFigure = ({ paper }: OnPaper) => (
  <>
    {paper.content.conformity ? (
      <StatementTables paper={paper} tables={tablesOf(paper.content)} isFirst />
    ) : null}
    <DeviationFigure paper={paper} />
  </>
);

const ofFew = (paper: Paper, opening: ReactNode): Part => {
  const tables = tablesOf(paper.content);
  const part = (
    <>
      {opening}
      <ResultTables paper={paper} tables={tables} isFirst />
      <ResultNotes paper={paper} />
      <Changes paper={paper} />
      <LotSummary paper={paper} />
      <RollSummary paper={paper} />
      {isSimplified(paper) ? <RuleAlone paper={paper} /> : <StatementsAndFigure paper={paper} />}
    </>
  );
  return { key: "results", part };
};

const flowing = (key: string, parts: readonly Part[]): Part => ({
  key,
  part: parts.map((one) => <Fragment key={one.key}>{one.part}</Fragment>),
});

/**
 * The document in its order, in parts that each begin on a new page and flow over as many as they need. A plain
 * certificate is one part. A second function, and each kind of table of many sets, begins a page: whoever looks for it
 * finds it at a page's head, and the renderer, which lays out all that is left of a part once a page, is done sooner.
 * What a simplified certificate leaves out (7.8.1.3) the laboratory keeps and gives on request.
 */
export const partsOf = (paper: Paper, mark: Mark | null): readonly Part[] => {
  const { budgets = [], laboratory, sets = [] } = paper.content;
  const opening = (
    <>
      {mark ? <AccreditationMark mark={mark} number={laboratory.accreditationNumber ?? ""} /> : null}
      <Particulars paper={paper} />
    </>
  );
  const functions = (isSimplified(paper) ? [] : functionsOf(paper)).map(
    ({ key, ...fitted }): Part => ({ key, part: <FunctionSection paper={paper} {...fitted} /> }),
  );
  const rest: Part = {
    key: "rest",
    part: (
      <>
        {isSimplified(paper) ? null : <Budgets paper={paper} />}
        <Rest paper={paper} />
      </>
    ),
  };
  if (sets.length >= manySets) return [...ofMany(paper, opening), ...functions, rest];
  const [first, ...others] = functions;
  const measured = [ofFew(paper, opening), ...(first ? [first] : [])];
  if (others.length === 0 && budgets.length < manyBudgets) return [flowing("whole", [...measured, rest])];
  return [flowing("results", measured), ...others, rest];
};
