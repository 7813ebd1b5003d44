CREATE TABLE calendar_address (
  person_id BIGINT NOT NULL,
  token_hash VARCHAR(64) NOT NULL,
  made_at TIMESTAMP WITH TIME ZONE NOT NULL,
  change_id BIGINT NOT NULL,
  CONSTRAINT calendar_address_pk PRIMARY KEY (person_id),
  CONSTRAINT calendar_address_uq UNIQUE (token_hash),
  CONSTRAINT calendar_address_person_fk FOREIGN KEY (person_id) REFERENCES person (id),
  CONSTRAINT calendar_address_change_fk FOREIGN KEY (change_id) REFERENCES change (id)
);
COMMENT ON TABLE calendar_address IS 'The one secret address under which a calendar program of a person reads due dates and outages without signing in. It opens nothing else. The row goes when the address is revoked.';
COMMENT ON COLUMN calendar_address.token_hash IS 'SHA-256 of the secret part, hexadecimal; the secret itself is kept nowhere.';
COMMENT ON COLUMN calendar_address.made_at IS 'When this address was made.';
COMMENT ON COLUMN calendar_address.person_id IS 'Whose it is; it ends with the account.';

ALTER TABLE bypass_step DROP CONSTRAINT bypass_step_step;
ALTER TABLE bypass_step DROP CONSTRAINT bypass_step_who;
ALTER TABLE bypass_step ADD CONSTRAINT bypass_step_step CHECK (step IN ('handed over', 'acknowledged', 'removed', 'proved'));
ALTER TABLE bypass_step ADD CONSTRAINT bypass_step_who CHECK ((step = 'handed over' AND removed_by IS NULL AND LENGTH(to_whom) > 0) OR (step = 'acknowledged' AND removed_by IS NULL AND LENGTH(to_whom) > 0) OR (step = 'removed' AND removed_by = person_id) OR (step = 'proved' AND removed_by IS NOT NULL AND removed_by <> person_id));
