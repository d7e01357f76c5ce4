/**
 * What may stand where in a D-SI quantity (https://ptb.de/si), in the notation of `dcc-model.ts`: the structure of
 * D-SI 2.2.1, which keeps the older forms (`expandedUnc`, `coverageInterval`, `list`) as deprecated. DCC 3.0 to 3.2
 * know only those; 3.3 knows both.
 */
export const siModel: Readonly<Record<string, string>> = {
  "si.Real":
    "label:label? quantityTypeQUDT:label? value:decimal unit:unit significantDigit:integer? dateTime:dateTime? measurementUncertaintyUnivariate:si.Uncertainty? expandedUnc:si.OldExpanded? coverageInterval:si.OldInterval?",
  "si.Constant":
    "label:label? quantityTypeQUDT:label? value:decimal unit:unit significantDigit:integer? dateTime:dateTime? valueStandardMU:size? uncertainty:size? distribution:label?",
  "si.Uncertainty": "standardMU:si.Standard? expandedMU:si.Expanded? coverageIntervalMU:si.Interval?",
  "si.Standard": "valueStandardMU:size distribution:label?",
  "si.Expanded":
    "valueExpandedMU:size coverageFactor:factor coverageProbability:probability distribution:label?",
  "si.Interval":
    "valueStandardMU:size intervalMin:decimal intervalMax:decimal coverageProbability:probability distribution:label?",
  "si.OldExpanded":
    "uncertainty:size coverageFactor:factor coverageProbability:probability distribution:label?",
  "si.OldInterval":
    "standardUnc:size intervalMin:decimal intervalMax:decimal coverageProbability:probability distribution:label?",
  "si.Column":
    "labelXMLList:words? quantityTypeQUDTXMLList:words? valueXMLList:decimals unitXMLList:units significantDigitXMLList:integers? dateTimeXMLList:dateTimes? measurementUncertaintyUnivariateXMLList:si.Uncertainties? expandedUncXMLList:si.OldExpandeds? coverageIntervalXMLList:si.OldIntervals? measurementUncertaintyMultivariateXMLList:anything? ellipsoidalRegionXMLList:anything? rectangularRegionXMLList:anything?",
  "si.Uncertainties":
    "standardMUXMLList:si.Standards? expandedMUXMLList:si.Expandeds? coverageIntervalMUXMLList:si.Intervals?",
  "si.Standards": "valueStandardMUXMLList:sizes distributionXMLList:words?",
  "si.Expandeds":
    "valueExpandedMUXMLList:sizes coverageFactorXMLList:factors coverageProbabilityXMLList:probabilities distributionXMLList:words?",
  "si.Intervals":
    "valueStandardMUXMLList:sizes intervalMinXMLList:decimals intervalMaxXMLList:decimals coverageProbabilityXMLList:probabilities distributionXMLList:words?",
  "si.OldExpandeds":
    "uncertaintyXMLList:sizes coverageFactorXMLList:factors coverageProbabilityXMLList:probabilities distributionXMLList:words?",
  "si.OldIntervals":
    "standardUncXMLList:sizes intervalMinXMLList:decimals intervalMaxXMLList:decimals coverageProbabilityXMLList:probabilities distributionXMLList:words?",
  "si.Hybrid":
    "real:si.Real* complex:anything* list:si.List* realList:si.RealList* realListXMLList:si.Column* complexList:anything* complexListXMLList:anything* constant:si.Constant*",
  // D-SI 1.3 writes the single values straight into the list; later versions put a realList between.
  "si.List":
    "label:label? dateTime:dateTime? realList:si.RealList* realListXMLList:si.Column* complexList:anything* complexListXMLList:anything* list:si.List* listUnit:unit? listUnitPhase:label? listUnivariateUnc:si.ListUncertainty? listBivariateUnc:anything? real:si.RealInList* complex:anything* ellipsoidalRegion:anything? rectangularRegion:anything?",
  "si.RealList":
    "label:label? dateTime:dateTime? listQuantityTypeQUDT:label? listUnit:unit? listsignificantDigit:integer? listMeasurementUncertaintyUnivariate:si.ListUncertainty? listUnivariateUnc:si.ListUncertainty? real:si.RealInList+ ellipsoidalRegion:anything? rectangularRegion:anything?",
  // The misspelling is the schema's own; a later one may mend it.
  "si.RealInList":
    "label:label? quantityTypeQUDT:label? value:decimal unit:unit? significantDigit:integer? dateTime:dateTime? measurementUncertaintyUnivaraite:si.Uncertainty? measurementUncertaintyUnivariate:si.Uncertainty? expandedUnc:si.OldExpanded? coverageInterval:si.OldInterval?",
  "si.ListUncertainty":
    "standardMU:si.Standard? expandedMU:si.Expanded? coverageIntervalMU:si.OldInterval? expandedUnc:si.OldExpanded? coverageInterval:si.OldInterval?",
};

const uncertainties = [
  "measurementUncertaintyUnivariate",
  "measurementUncertaintyUnivaraite",
  "expandedUnc",
  "coverageInterval",
];

export const siChoices: Readonly<
  Record<string, { readonly atLeast: 0 | 1; readonly atMost: number; readonly of: readonly string[] }[]>
> = {
  "si.Real": [{ atLeast: 0, atMost: 1, of: uncertainties }],
  "si.RealInList": [{ atLeast: 0, atMost: 1, of: uncertainties }],
  "si.Uncertainty": [{ atLeast: 1, atMost: 1, of: ["standardMU", "expandedMU", "coverageIntervalMU"] }],
  "si.Uncertainties": [
    { atLeast: 1, atMost: 1, of: ["standardMUXMLList", "expandedMUXMLList", "coverageIntervalMUXMLList"] },
  ],
  "si.ListUncertainty": [
    {
      atLeast: 1,
      atMost: 1,
      of: ["standardMU", "expandedMU", "coverageIntervalMU", "expandedUnc", "coverageInterval"],
    },
  ],
  "si.Column": [
    {
      atLeast: 0,
      atMost: 1,
      of: ["measurementUncertaintyUnivariateXMLList", "expandedUncXMLList", "coverageIntervalXMLList"],
    },
  ],
  "si.RealList": [
    { atLeast: 0, atMost: 1, of: ["listMeasurementUncertaintyUnivariate", "listUnivariateUnc"] },
  ],
  "si.Hybrid": [
    {
      atLeast: 1,
      atMost: Number.POSITIVE_INFINITY,
      of: [
        "real",
        "complex",
        "list",
        "realList",
        "realListXMLList",
        "complexList",
        "complexListXMLList",
        "constant",
      ],
    },
  ],
  "si.List": [
    {
      atLeast: 1,
      atMost: Number.POSITIVE_INFINITY,
      of: ["realList", "realListXMLList", "complexList", "complexListXMLList", "list", "real", "complex"],
    },
  ],
};
