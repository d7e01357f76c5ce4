-- How many sensors of a line are here and how far each is, from the index alone; and the few sign-offs that owe a second look.
CREATE INDEX sensor_line_states ON sensor (order_line_id) INCLUDE (state, customer_id);
CREATE INDEX review_decision_exception ON review_decision (id) WHERE exception_reason IS NOT NULL;
