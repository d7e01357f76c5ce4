-- AlterTable
ALTER TABLE "customer_order" ADD COLUMN     "false_acceptance_percent" DOUBLE PRECISION;

-- Two rules more (ILAC-G8:09/2019, 4.2.2): guarded with pass or fail alone, and by a target risk of false acceptance.
ALTER TABLE customer_order DROP CONSTRAINT customer_order_decision_rule_word;
ALTER TABLE customer_order ADD CONSTRAINT customer_order_decision_rule_word
  CHECK (decision_rule ~ '^(none|simple|guarded|guarded-binary|target-risk)$');

-- Each rule has its own figure and no other's. `customer_order_check` was the name of: guarded = guard band given.
ALTER TABLE customer_order DROP CONSTRAINT customer_order_check;
ALTER TABLE customer_order
  ADD CONSTRAINT customer_order_guard_band_of_rule
    CHECK ((decision_rule IN ('guarded', 'guarded-binary')) = (guard_band_ratio IS NOT NULL)),
  ADD CONSTRAINT customer_order_risk_of_rule
    CHECK ((decision_rule = 'target-risk') = (false_acceptance_percent IS NOT NULL)),
  ADD CONSTRAINT customer_order_false_acceptance_percent_finite
    CHECK (false_acceptance_percent BETWEEN 0.0001 AND 50);
