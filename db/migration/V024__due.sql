ALTER TABLE loop_verdict ADD COLUMN due_on DATE;
COMMENT ON COLUMN loop_verdict.due_on IS 'When the next calibration is due: the last as-left and the point''s interval later; absent where one of them is not on record.';
CREATE INDEX loop_verdict_by_due ON loop_verdict (due_on, point_id);
