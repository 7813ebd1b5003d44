ALTER TABLE calibration ADD COLUMN setup VARCHAR(10);
ALTER TABLE calibration ADD CONSTRAINT calibration_setup CHECK (setup IN ('bench', 'stood in'));
ALTER TABLE calibration ADD CONSTRAINT calibration_setup_point CHECK ((COALESCE(setup, 'fitted') = 'bench') = (point_id IS NULL));
COMMENT ON COLUMN calibration.setup IS 'Absent where the combination is what was fitted at the point. bench: parts taken together at no point. stood in: at the point, but with another part in the place of a fitted one; it never counts as the as-left of what is fitted there.';

ALTER TABLE calibration_draft ALTER COLUMN point_id DROP NOT NULL;
ALTER TABLE calibration_draft ADD COLUMN fingerprint VARCHAR(200);
ALTER TABLE calibration_draft DROP CONSTRAINT calibration_draft_uq;
ALTER TABLE calibration_draft ADD CONSTRAINT calibration_draft_uq UNIQUE NULLS NOT DISTINCT (point_id, fingerprint, person_id, stage);
COMMENT ON COLUMN calibration_draft.fingerprint IS 'The parts measured, where they are not the ones fitted at the point; see combination.fingerprint.';
