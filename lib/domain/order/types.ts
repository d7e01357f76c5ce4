import type { TypeLetter } from "../evidence/schema";
import type { SensorState } from "../sensor/transitions";
import type { DecisionRuleKind, Protection, TemperatureUnit, ToleranceChoice, Urgency } from "./labels";
import type { LineMarks } from "./line-marks";
import type { LineOptions } from "./options";
import type { RuleSet } from "./rule-set";
import type { Setpoint } from "./setpoint";
import type { OrderState } from "./transitions";
import type { UseTerms } from "./use-terms";

export type OrderLine = {
  readonly id: string;
  readonly position: number;
  readonly typeLetter: TypeLetter;
  readonly construction: string;
  readonly protection: Protection;
  readonly quantity: number;
  readonly temperatureUnit: TemperatureUnit;
  readonly setpoints: readonly Setpoint[];
  readonly tolerance: ToleranceChoice;
  /** ± in the line's unit, with the choice "own" alone. */
  readonly ownLimit?: number | null;
  readonly useTerms: UseTerms;
  readonly options: LineOptions;
  readonly marks: LineMarks;
  readonly sensors: readonly {
    readonly id: string;
    readonly tag: string;
    readonly serial: string;
    readonly state: SensorState;
    /** It goes back unmeasured, and the customer sends another in its place. */
    readonly isReplaced?: boolean;
  }[];
};

export type Order = {
  readonly id: string;
  readonly number: string;
  readonly customerId: string;
  readonly purchaseOrder: string | null;
  readonly state: OrderState;
  /** desk | portal | interface | repeat: where it came from. */
  readonly origin: string;
  readonly urgency: Urgency;
  readonly ruleSet: RuleSet;
  readonly decisionRule: DecisionRuleKind;
  readonly guardBandRatio: number | null;
  readonly falseAcceptancePercent: number | null;
  readonly decisionRuleAgreedBy: string | null;
  /** YYYY-MM-DD */
  readonly decisionRuleAgreedOn: string | null;
  readonly uncertaintyDigits: number;
  readonly note: string;
  readonly recordedById: string;
  readonly recordedAt: Date;
  readonly acceptedById: string | null;
  readonly acceptedAt: Date | null;
  readonly version: number;
  readonly lines: readonly OrderLine[];
};
