-- A hospital's store of all its stations' events, on PostgreSQL 15 or later.
--
--   psql -X -v ON_ERROR_STOP=1 -f schema.sql DATABASE       as a superuser; again after each update of the programs
--
-- Each step below has a number. A step that the database has is passed over, and each is one transaction, so this file makes a
-- new store and brings every older one up to date. A step that was ever shipped is not changed: what is to stand otherwise
-- gets a step of its own.
--
-- Who may do what. Everything belongs to bt_owner, who cannot log in. A station logs in with a role of its own, a member of
-- bt_station, which its client certificate names; it can call the functions that are granted to bt_station, and read and write
-- no table. Which station a role is stands in bt.login and nowhere in what it sends. Whoever reads is a member of bt_reader and
-- sees the stations that bt.reader gives that role. Whoever looks after stock, staff and recalls is a member of bt_stores.
--
-- An event is known by station, incarnation and number. Its text is kept as it was signed, byte for byte, and its hash is
-- SHA-256 over the hash before it and that text, as in the station's own record. Nobody changes or deletes one; who takes the
-- trigger away and does so breaks the chain, which bt.broken() shows.
\set QUIET on
\set ON_ERROR_STOP on
SET client_min_messages = warning;
SELECT to_regclass('bt.version') IS NULL AS to_make \gset
\if :to_make
BEGIN;
DO $$ DECLARE r text; BEGIN -- roles are the whole server's: another store may have made them
  FOREACH r IN ARRAY ARRAY['bt_owner', 'bt_station', 'bt_reader', 'bt_stores'] LOOP
    IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = r) THEN EXECUTE format('CREATE ROLE %I NOLOGIN', r); END IF;
  END LOOP;
  EXECUTE format('REVOKE TEMPORARY, CREATE ON DATABASE %I FROM PUBLIC', current_database());
END $$;
CREATE SCHEMA bt AUTHORIZATION bt_owner;
REVOKE ALL ON SCHEMA public FROM PUBLIC;
SET LOCAL ROLE bt_owner;
CREATE TABLE bt.version (step int PRIMARY KEY, at timestamptz NOT NULL DEFAULT now());
COMMIT;
\endif

------------------------------------------------------------------------------------------------------------------------
SELECT NOT EXISTS (SELECT FROM bt.version WHERE step = 1) AS to_do \gset
\if :to_do
BEGIN;
SET LOCAL ROLE bt_owner;
SET LOCAL search_path = bt;
ALTER DEFAULT PRIVILEGES FOR ROLE bt_owner REVOKE EXECUTE ON FUNCTIONS FROM PUBLIC;

CREATE TABLE station (
  id int GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
  site text NOT NULL CHECK (site ~ '^[A-Z]{2}$'), number int NOT NULL CHECK (number BETWEEN 0 AND 99),
  rooms text NOT NULL DEFAULT '', seen_at timestamptz, clock_off_ms bigint,
  UNIQUE (site, number));
-- A role speaks for one station, or, where the number is null, for all of a site: a hospital that forwards to its region.
CREATE TABLE login (role name PRIMARY KEY, site text NOT NULL, number int);
-- A role reads one station, a site (number null), or all (both null).
CREATE TABLE reader (role name NOT NULL, site text, number int, UNIQUE NULLS NOT DISTINCT (role, site, number));

-- How far each has come. base_seq: the last event that this incarnation shares with an earlier one.
CREATE TABLE head (
  station int REFERENCES station, incarnation int, base_seq bigint NOT NULL, last_seq bigint NOT NULL,
  last_hash bytea NOT NULL, at timestamptz NOT NULL DEFAULT now(),
  PRIMARY KEY (station, incarnation)) WITH (fillfactor = 50);
CREATE TABLE event (
  station int NOT NULL, incarnation int NOT NULL, seq bigint NOT NULL, case_no int NOT NULL, kind text NOT NULL,
  room int NOT NULL, wall_ms bigint NOT NULL, payload text NOT NULL, hash bytea NOT NULL,
  PRIMARY KEY (station, incarnation, seq));
CREATE INDEX event_case ON event (station, case_no, seq) WHERE case_no > 0;
CREATE INDEX event_time ON event USING brin (wall_ms);
-- What was refused or found wrong, until somebody has settled it; one row for each thing, however often it comes.
CREATE TABLE incident (
  id bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY, at timestamptz NOT NULL DEFAULT now(), station int NOT NULL,
  incarnation int NOT NULL, seq bigint NOT NULL, what text NOT NULL, ours bytea, theirs bytea,
  times int NOT NULL DEFAULT 1, last_at timestamptz NOT NULL DEFAULT now(), settled_at timestamptz, settled_by name,
  UNIQUE (station, incarnation, seq, what));

CREATE FUNCTION no_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN RAISE EXCEPTION 'the record is append-only'; END $$;
CREATE TRIGGER no_change BEFORE UPDATE OR DELETE OR TRUNCATE ON event FOR EACH STATEMENT EXECUTE FUNCTION no_change();

-- The station that the caller may speak for under this number; an error where it may not.
CREATE FUNCTION station_of(p_number int) RETURNS int
LANGUAGE plpgsql SECURITY DEFINER SET search_path = bt, pg_catalog, pg_temp AS $$
DECLARE l login; s int;
BEGIN
  SELECT * INTO l FROM login WHERE role = session_user;
  IF NOT FOUND OR l.number <> p_number THEN
    RAISE EXCEPTION 'this role does not speak for station %', p_number USING ERRCODE = '42501';
  END IF;
  SELECT id INTO s FROM station WHERE site = l.site AND number = p_number;
  IF s IS NULL THEN
    INSERT INTO station (site, number) VALUES (l.site, p_number) ON CONFLICT DO NOTHING;
    SELECT id INTO STRICT s FROM station WHERE site = l.site AND number = p_number;
  END IF;
  RETURN s;
END $$;

CREATE FUNCTION note_incident(p_station int, p_incarnation int, p_seq bigint, p_what text, p_ours bytea, p_theirs bytea)
RETURNS void LANGUAGE sql SET search_path = bt, pg_catalog, pg_temp AS $$
  INSERT INTO incident (station, incarnation, seq, what, ours, theirs)
  VALUES (p_station, p_incarnation, p_seq, p_what, p_ours, p_theirs)
  ON CONFLICT (station, incarnation, seq, what) DO UPDATE
    SET times = incident.times + 1, last_at = now(), theirs = excluded.theirs, settled_at = NULL, settled_by = NULL;
  SELECT pg_notify('bt_incident', p_station::text);
$$;

-- A station says who it is, at each connection. status: ok (goes on behind last_seq), begin (this incarnation is new here:
-- common(), then begin()), behind (its record ends before what is here: it was put back to an older state).
-- incident: what is still to be settled about this station, '' nothing. clock_off_ms: how far its clock is ahead. server and
-- timeline: which server answers; a standby that takes over has the same and a timeline that is higher.
CREATE FUNCTION hello(p_number int, p_incarnation int, p_seq bigint, p_wall_ms bigint, p_rooms text,
  OUT status text, OUT last_seq bigint, OUT last_hash bytea, OUT clock_off_ms bigint, OUT incident text,
  OUT server text, OUT timeline int)
LANGUAGE plpgsql SECURITY DEFINER SET search_path = bt, pg_catalog, pg_temp AS $$
DECLARE s int := station_of(p_number);
BEGIN
  SELECT system_identifier::text INTO server FROM pg_control_system();
  timeline := ('x' || left(pg_walfile_name(pg_current_wal_lsn()), 8))::bit(32)::int;
  clock_off_ms := p_wall_ms - (extract(epoch FROM clock_timestamp()) * 1000)::bigint;
  UPDATE station SET seen_at = now(), rooms = p_rooms, clock_off_ms = hello.clock_off_ms WHERE id = s;
  SELECT h.last_seq, h.last_hash INTO last_seq, last_hash FROM head h WHERE h.station = s AND h.incarnation = p_incarnation;
  status := CASE WHEN NOT FOUND THEN 'begin' WHEN last_seq > p_seq THEN 'behind' ELSE 'ok' END;
  IF status = 'behind' THEN PERFORM note_incident(s, p_incarnation, p_seq, 'behind', last_hash, NULL); END IF;
  SELECT coalesce(string_agg(i.what || ' ' || i.seq, ', ' ORDER BY i.id), '') INTO incident
    FROM incident i WHERE i.station = s AND i.settled_at IS NULL;
END $$;

-- Which of these events are here, under any incarnation: the greatest number, 0 none. The caller narrows it down.
CREATE FUNCTION common(p_number int, p_seq bigint[], p_hash bytea[]) RETURNS bigint
LANGUAGE sql SECURITY DEFINER SET search_path = bt, pg_catalog, pg_temp AS $$
  SELECT coalesce(max(e.seq), 0) FROM (SELECT station_of(p_number) AS id) s, unnest(p_seq, p_hash) u(seq, hash)
  JOIN event e ON e.seq = u.seq AND e.hash = u.hash
  WHERE e.station = s.id AND e.incarnation IN (SELECT h.incarnation FROM head h WHERE h.station = s.id) $$;

-- Begins an incarnation behind an event that it shares with an earlier one; 0 and 32 zero bytes: at the beginning.
-- status: ok; fork (there is a later incarnation, or no such event).
CREATE FUNCTION begin(p_number int, p_incarnation int, p_seq bigint, p_hash bytea, OUT status text)
LANGUAGE plpgsql SECURITY DEFINER SET search_path = bt, pg_catalog, pg_temp AS $$
DECLARE s int := station_of(p_number);
BEGIN
  PERFORM FROM station WHERE id = s FOR UPDATE;
  IF p_incarnation > coalesce((SELECT max(incarnation) FROM head WHERE station = s), 0)
    AND (p_seq = 0 AND p_hash = decode(repeat('00', 32), 'hex')
         OR EXISTS (SELECT FROM event WHERE station = s AND seq = p_seq AND hash = p_hash
                    AND incarnation IN (SELECT incarnation FROM head WHERE station = s))) THEN
    INSERT INTO head (station, incarnation, base_seq, last_seq, last_hash) VALUES (s, p_incarnation, p_seq, p_seq, p_hash);
    status := 'ok';
    RETURN;
  END IF;
  PERFORM note_incident(s, p_incarnation, p_seq, 'fork', NULL, p_hash);
  status := 'fork';
END $$;

-- Sends a batch of events that follow each other, the first with the number p_first. Nothing but its answer says that they are
-- kept. status: ok (kept, or here already), gap (send from last_seq + 1 on), fork (under one of these numbers there is another
-- event), changed (a text that its hash does not fit, or that is no event), begin (this incarnation is not known). Only
-- with ok anything is kept of the batch; fork and changed are noted as incidents.
CREATE FUNCTION append(p_number int, p_incarnation int, p_first bigint, p_payload text[], p_hash bytea[],
  OUT status text, OUT last_seq bigint, OUT last_hash bytea)
LANGUAGE plpgsql SECURITY DEFINER SET search_path = bt, pg_catalog, pg_temp AS $$
DECLARE s int := station_of(p_number); n int := cardinality(p_payload); k int; done bigint; base bigint; h bytea;
BEGIN
  SELECT d.last_seq, d.last_hash, d.base_seq INTO last_seq, last_hash, base FROM head d
    WHERE d.station = s AND d.incarnation = p_incarnation FOR UPDATE;
  IF NOT FOUND THEN status := 'begin'; RETURN; END IF;
  IF n = 0 OR n IS DISTINCT FROM cardinality(p_hash) OR p_first > last_seq + 1 OR p_first < 1 THEN
    status := 'gap'; RETURN;
  END IF;
  k := least(n, last_seq - p_first + 1);          -- these are here: by the chain, one hash proves them all
  IF k > 0 THEN
    h := CASE WHEN p_first + k - 1 = last_seq THEN last_hash ELSE
      (SELECT e.hash FROM event e WHERE e.station = s AND e.seq = p_first + k - 1
         AND e.incarnation <= p_incarnation AND (e.incarnation = p_incarnation OR e.seq <= base)
       ORDER BY (e.hash = p_hash[k]) DESC LIMIT 1) END;
    IF h IS DISTINCT FROM p_hash[k] THEN
      PERFORM note_incident(s, p_incarnation, p_first + k - 1, 'fork', h, p_hash[k]);
      status := 'fork'; last_hash := h; RETURN;
    END IF;
  END IF;
  status := 'ok';
  IF k = n THEN RETURN; END IF;
  BEGIN
    INSERT INTO event
    SELECT s, p_incarnation, p_first + i - 1, coalesce(x."case", 0), x.kind, coalesce(x.room, 0), x.wall_ms, payload, c.hash
    FROM (SELECT i, payload, u.hash, lag(u.hash, 1, append.last_hash) OVER (ORDER BY i) AS prev
          FROM unnest(p_payload, p_hash) WITH ORDINALITY u(payload, hash, i) WHERE i > k) c,
         json_to_record(payload::json) x(seq bigint, "case" int, kind text, room int, wall_ms bigint, station int)
    WHERE sha256(prev || convert_to(payload, 'UTF8')) = c.hash AND x.seq = p_first + i - 1
      AND coalesce(x.station, 0) = p_number;
    GET DIAGNOSTICS done = ROW_COUNT;
    IF done <> n - k THEN RAISE EXCEPTION 'does not follow' USING ERRCODE = 'BT003'; END IF;
  EXCEPTION WHEN SQLSTATE 'BT003' OR data_exception OR not_null_violation THEN
    PERFORM note_incident(s, p_incarnation, p_first + k, 'changed', last_hash, p_hash[k + 1]);
    status := 'changed'; RETURN;
  END;
  last_seq := p_first + n - 1; last_hash := p_hash[n];
  UPDATE head d SET last_seq = append.last_seq, last_hash = append.last_hash, at = now()
    WHERE d.station = s AND d.incarnation = p_incarnation;
END $$;

-- A station was told that this event is kept, and it is not here any more: the store was put back to an older state.
CREATE FUNCTION lost(p_number int, p_incarnation int, p_seq bigint, p_hash bytea) RETURNS void
LANGUAGE plpgsql SECURITY DEFINER SET search_path = bt, pg_catalog, pg_temp AS $$
DECLARE s int := station_of(p_number);
BEGIN
  PERFORM note_incident(s, p_incarnation, p_seq, 'lost', NULL, p_hash);
END $$;

-- Somebody has looked into it. The row stays.
CREATE FUNCTION settle(p_incident bigint) RETURNS void
LANGUAGE sql SECURITY DEFINER SET search_path = bt, pg_catalog, pg_temp AS $$
  UPDATE incident SET settled_at = now(), settled_by = session_user WHERE id = p_incident $$;

-- Every event whose hash does not follow from the one before it. Reads the whole table: for the night.
CREATE FUNCTION broken() RETURNS TABLE (station int, incarnation int, seq bigint)
LANGUAGE sql SECURITY DEFINER SET search_path = bt, pg_catalog, pg_temp AS $$
  WITH chained AS (
    SELECT e.station, e.incarnation, e.seq, e.hash, e.payload, h.base_seq,
           lag(e.seq) OVER w AS before, lag(e.hash) OVER w AS prev
    FROM event e LEFT JOIN head h USING (station, incarnation)
    WINDOW w AS (PARTITION BY e.station, e.incarnation ORDER BY e.seq)),
  based AS (
    SELECT c.*, coalesce(c.before, c.base_seq) AS follows,
           coalesce(c.prev, CASE WHEN c.base_seq = 0 THEN decode(repeat('00', 32), 'hex') ELSE
             (SELECT o.hash FROM event o WHERE o.station = c.station AND o.seq = c.base_seq AND o.incarnation < c.incarnation
                AND sha256(o.hash || convert_to(c.payload, 'UTF8')) = c.hash LIMIT 1) END) AS onto
    FROM chained c)
  SELECT b.station, b.incarnation, b.seq FROM based b
  WHERE b.follows IS DISTINCT FROM b.seq - 1 OR sha256(b.onto || convert_to(b.payload, 'UTF8')) IS DISTINCT FROM b.hash
  UNION ALL -- the end cut off
  SELECT h.station, h.incarnation, h.last_seq FROM head h WHERE h.last_seq > h.base_seq AND NOT EXISTS (
    SELECT FROM event e WHERE e.station = h.station AND e.incarnation = h.incarnation AND e.seq = h.last_seq
      AND e.hash = h.last_hash)
  ORDER BY 1, 2, 3 $$;

-- The stations that the caller may read.
CREATE FUNCTION my_stations() RETURNS int[]
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = bt, pg_catalog, pg_temp AS $$
  SELECT coalesce(array_agg(DISTINCT s.id), '{}') FROM station s
  JOIN reader r ON (r.site IS NULL OR r.site = s.site) AND (r.number IS NULL OR r.number = s.number)
  WHERE r.role = session_user $$;

ALTER TABLE event ENABLE ROW LEVEL SECURITY;
ALTER TABLE station ENABLE ROW LEVEL SECURITY;
ALTER TABLE head ENABLE ROW LEVEL SECURITY;
ALTER TABLE incident ENABLE ROW LEVEL SECURITY;
CREATE POLICY of_reader ON event FOR SELECT TO bt_reader USING (station = ANY ((SELECT my_stations())::int[]));
CREATE POLICY of_reader ON station FOR SELECT TO bt_reader USING (id = ANY ((SELECT my_stations())::int[]));
CREATE POLICY of_reader ON head FOR SELECT TO bt_reader USING (station = ANY ((SELECT my_stations())::int[]));
CREATE POLICY of_reader ON incident FOR SELECT TO bt_reader USING (station = ANY ((SELECT my_stations())::int[]));
GRANT USAGE ON SCHEMA bt TO bt_station, bt_reader, bt_stores;
GRANT EXECUTE ON FUNCTION hello, common, begin, append, lost TO bt_station;
GRANT EXECUTE ON FUNCTION my_stations, broken TO bt_reader;
GRANT EXECUTE ON FUNCTION settle TO bt_stores;
GRANT SELECT ON event, station, head, incident, version TO bt_reader;

-- Who keeps a store makes a station known: its role logs in with a client certificate of the same name.
CREATE FUNCTION add_station(p_site text, p_number int) RETURNS name
LANGUAGE plpgsql SET search_path = bt, pg_catalog, pg_temp AS $$
DECLARE r name := format('station-%s-%s', lower(p_site), to_char(p_number, 'FM00'));
BEGIN
  EXECUTE format('CREATE ROLE %I LOGIN IN ROLE bt_station CONNECTION LIMIT 4', r);
  INSERT INTO login VALUES (r, p_site, p_number);
  INSERT INTO station (site, number) VALUES (p_site, p_number) ON CONFLICT DO NOTHING;
  RETURN r;
END $$;
CREATE FUNCTION add_reader(p_role name, p_site text DEFAULT NULL, p_number int DEFAULT NULL) RETURNS void
LANGUAGE plpgsql SET search_path = bt, pg_catalog, pg_temp AS $$
BEGIN
  IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = p_role) THEN
    EXECUTE format('CREATE ROLE %I LOGIN', p_role);
  END IF;
  EXECUTE format('GRANT bt_reader TO %I', p_role);
  INSERT INTO reader VALUES (p_role, p_site, p_number) ON CONFLICT DO NOTHING;
END $$;
INSERT INTO version VALUES (1);
COMMIT;
\endif

------------------------------------------------------------------------------------------------------------------------
-- 2: what comes back to the stations.
SELECT NOT EXISTS (SELECT FROM bt.version WHERE step = 2) AS to_do \gset
\if :to_do
BEGIN;
SET LOCAL ROLE bt_owner;
SET LOCAL search_path = bt;

-- One list for a site, which only grows; a station asks for what is behind the version that it has. Versions are given out in
-- the order of their commits, since publish() lets one in at a time: else a reader could pass over one.
--   recall {line, lot, why} and release {line, lot, why}: into and out of quarantine; lot "" is the whole line
--   line {…} of the catalogue, staff {number, name, kind, registered}, withdraw {number}: as events of the station have them
--   twice {identity, line, lot, first: {station, case}, second: {station, case}}: one item in two cases
CREATE TABLE list (
  version bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY, site text NOT NULL,
  kind text NOT NULL CHECK (kind IN ('recall', 'release', 'line', 'staff', 'withdraw', 'twice')),
  body text NOT NULL CHECK (json_typeof(body::json) = 'object'), origin text NOT NULL, at timestamptz NOT NULL DEFAULT now());
CREATE INDEX list_site ON list (site, version);
CREATE TRIGGER no_change BEFORE UPDATE OR DELETE OR TRUNCATE ON list FOR EACH STATEMENT EXECUTE FUNCTION no_change();
CREATE TABLE took (station int REFERENCES station PRIMARY KEY, version bigint NOT NULL, at timestamptz NOT NULL);
-- For which site a member of bt_stores may say something; null: all.
CREATE TABLE keeper (role name NOT NULL, site text, UNIQUE NULLS NOT DISTINCT (role, site));

CREATE FUNCTION publish_as(p_site text, p_kind text, p_body text, p_origin text) RETURNS bigint
LANGUAGE plpgsql SET search_path = bt, pg_catalog, pg_temp AS $$
DECLARE v bigint;
BEGIN
  LOCK TABLE list IN SHARE ROW EXCLUSIVE MODE;
  INSERT INTO list (site, kind, body, origin) VALUES (p_site, p_kind, p_body, p_origin) RETURNING version INTO v;
  PERFORM pg_notify('bt_list', '');
  RETURN v;
END $$;
-- The version that it got.
CREATE FUNCTION publish(p_site text, p_kind text, p_body text) RETURNS bigint
LANGUAGE plpgsql SECURITY DEFINER SET search_path = bt, pg_catalog, pg_temp AS $$
BEGIN
  IF NOT EXISTS (SELECT FROM keeper WHERE role = session_user AND (site IS NULL OR site = p_site)) THEN
    RAISE EXCEPTION 'this role keeps no lists of site %', p_site USING ERRCODE = '42501';
  END IF;
  RETURN publish_as(p_site, p_kind, p_body, session_user);
END $$;
CREATE FUNCTION recall(p_site text, p_line text, p_lot text, p_why text) RETURNS bigint LANGUAGE sql
SECURITY DEFINER SET search_path = bt, pg_catalog, pg_temp AS $$
  SELECT publish(p_site, 'recall', json_build_object('line', p_line, 'lot', p_lot, 'why', p_why)::text) $$;
CREATE FUNCTION release(p_site text, p_line text, p_lot text, p_why text) RETURNS bigint LANGUAGE sql
SECURITY DEFINER SET search_path = bt, pg_catalog, pg_temp AS $$
  SELECT publish(p_site, 'release', json_build_object('line', p_line, 'lot', p_lot, 'why', p_why)::text) $$;

-- What is behind a version, and in each row how far the list has come; one row without an entry where there is none.
CREATE FUNCTION lists(p_number int, p_after bigint, p_limit int)
RETURNS TABLE (version bigint, origin text, kind text, body text, last bigint)
LANGUAGE plpgsql SECURITY DEFINER SET search_path = bt, pg_catalog, pg_temp AS $$
#variable_conflict use_column
DECLARE mine text := (SELECT s.site FROM station s WHERE s.id = station_of(p_number)); top bigint;
BEGIN
  top := coalesce((SELECT max(l.version) FROM list l WHERE l.site = mine), 0);
  RETURN QUERY SELECT l.version, l.origin, l.kind, l.body, top FROM list l
    WHERE l.site = mine AND l.version > p_after ORDER BY l.version LIMIT p_limit;
  IF NOT FOUND THEN RETURN QUERY SELECT NULL::bigint, NULL::text, NULL::text, NULL::text, top; END IF;
END $$;
-- A station has taken over the list up to this version.
CREATE FUNCTION took(p_number int, p_version bigint) RETURNS void
LANGUAGE plpgsql SECURITY DEFINER SET search_path = bt, pg_catalog, pg_temp AS $$
DECLARE s int := station_of(p_number);
BEGIN
  INSERT INTO took VALUES (s, p_version, now())
    ON CONFLICT (station) DO UPDATE SET version = excluded.version, at = excluded.at;
END $$;
-- Which rooms have not taken over a recall; since when their station was not heard of.
CREATE VIEW recall_waiting WITH (security_barrier) AS
  SELECT l.version, l.at, l.body, s.site, s.number AS station, s.rooms, s.seen_at
  FROM list l JOIN station s USING (site) LEFT JOIN took t ON t.station = s.id
  WHERE l.kind = 'recall' AND coalesce(t.version, 0) < l.version AND s.id = ANY ((SELECT my_stations())::int[]);

-- Items of a single use that were in a case, by the identity on the item or its pack: each once.
CREATE TABLE used (site text, identity text, station int NOT NULL, case_no int NOT NULL, incarnation int NOT NULL,
  seq bigint NOT NULL, PRIMARY KEY (site, identity));
-- Of the events that were just kept.
CREATE FUNCTION note_used(p_station int, p_incarnation int, p_first bigint, p_last bigint) RETURNS void
LANGUAGE plpgsql SET search_path = bt, pg_catalog, pg_temp AS $$
DECLARE t record; mine text := (SELECT site FROM station WHERE id = p_station);
BEGIN
  FOR t IN
    WITH new AS (
      SELECT DISTINCT ON (x.thing->>'identity') x.thing->>'identity' AS identity, x.thing->>'line' AS line,
             x.thing->>'lot' AS lot, e.case_no, e.seq
      FROM event e, json_to_record(e.payload::json) x(thing json)
      WHERE e.station = p_station AND e.incarnation = p_incarnation AND e.seq BETWEEN p_first AND p_last
        AND e.kind = 'item-used' AND x.thing->>'identity' <> '' AND x.thing->>'single_use' = '1'
      ORDER BY x.thing->>'identity', e.seq),
    kept AS (
      INSERT INTO used SELECT mine, identity, p_station, case_no, p_incarnation, seq FROM new ORDER BY identity
      ON CONFLICT DO NOTHING RETURNING identity)
    SELECT n.*, u.station AS first_station, u.case_no AS first_case FROM new n
    JOIN used u ON u.site = mine AND u.identity = n.identity
    WHERE n.identity NOT IN (SELECT identity FROM kept) AND (u.station, u.case_no) <> (p_station, n.case_no)
  LOOP
    PERFORM note_incident(p_station, p_incarnation, t.seq, 'twice', NULL, NULL);
    PERFORM publish_as(mine, 'twice', json_build_object('identity', t.identity, 'line', coalesce(t.line, ''),
      'lot', coalesce(t.lot, ''), 'first', json_build_object('station', (SELECT number FROM station WHERE id = t.first_station),
      'case', t.first_case), 'second', json_build_object('station', (SELECT number FROM station WHERE id = p_station),
      'case', t.case_no))::text, 'store');
  END LOOP;
END $$;
-- After each row of head moved: what append() kept since.
CREATE FUNCTION after_append() RETURNS trigger LANGUAGE plpgsql SET search_path = bt, pg_catalog, pg_temp AS $$
BEGIN
  PERFORM note_used(NEW.station, NEW.incarnation, OLD.last_seq + 1, NEW.last_seq);
  RETURN NULL;
END $$;
CREATE TRIGGER after_append AFTER UPDATE ON head FOR EACH ROW WHEN (NEW.last_seq > OLD.last_seq)
  EXECUTE FUNCTION after_append();

GRANT EXECUTE ON FUNCTION lists, took TO bt_station;
GRANT EXECUTE ON FUNCTION publish, recall, release TO bt_stores;
GRANT EXECUTE ON FUNCTION my_stations TO bt_stores;
GRANT SELECT ON list, took, recall_waiting TO bt_reader, bt_stores;

CREATE FUNCTION add_keeper(p_role name, p_site text DEFAULT NULL) RETURNS void
LANGUAGE plpgsql SET search_path = bt, pg_catalog, pg_temp AS $$
BEGIN
  IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = p_role) THEN
    EXECUTE format('CREATE ROLE %I LOGIN', p_role);
  END IF;
  EXECUTE format('GRANT bt_stores TO %I', p_role);
  INSERT INTO keeper VALUES (p_role, p_site) ON CONFLICT DO NOTHING;
  INSERT INTO reader VALUES (p_role, p_site, NULL) ON CONFLICT DO NOTHING;
END $$;
INSERT INTO version VALUES (2);
COMMIT;
\endif

------------------------------------------------------------------------------------------------------------------------
-- 3: a row a case, which append keeps up, so that a report need not read the events.
SELECT NOT EXISTS (SELECT FROM bt.version WHERE step = 3) AS to_do \gset
\if :to_do
BEGIN;
SET LOCAL ROLE bt_owner;
SET LOCAL search_path = bt;

-- Made of the case's events when it begins, when it ends, and at each event that comes to it afterwards.
CREATE TABLE case_summary (
  station int NOT NULL, case_no int NOT NULL, room int NOT NULL, single bool NOT NULL,
  opened_ms bigint NOT NULL, ended_ms bigint, outcome text,     -- null: open; reconciled, unresolved, cancelled
  events int NOT NULL, items int NOT NULL, lots text[] NOT NULL, -- counted in, extra ones too
  digits int NOT NULL, stretches int NOT NULL, longest_s int,   -- with a tourniquet on; the longest stretch, null none has ended
  at_least bool NOT NULL,                                       -- there was a power cut in it, or it was still on
  discrepancies int NOT NULL, refused int NOT NULL, keyed int NOT NULL, late int NOT NULL, undone int NOT NULL,
  slips int NOT NULL, slips_seen int NOT NULL, found_after int NOT NULL,
  PRIMARY KEY (station, case_no)) WITH (fillfactor = 80);
CREATE INDEX case_opened ON case_summary (opened_ms);
CREATE INDEX case_lots ON case_summary USING gin (lots);

-- The stretches of a case's tourniquets, of its events of digits and those that UNDO was entered as, in order. What UNDO took
-- back is left out. No query in it: it is called for each case.
CREATE FUNCTION stretches(p_events text[], OUT digits int, OUT count int, OUT longest_s int, OUT at_least bool)
LANGUAGE plpgsql IMMUTABLE STRICT SET search_path = bt, pg_catalog, pg_temp AS $$
DECLARE t text; e record; on_ms bigint[] := array_fill(NULL::bigint, ARRAY[24]); on_boot int[] := array_fill(0, ARRAY[24]);
  was_ms bigint[] := on_ms; last_s int[] := array_fill(0, ARRAY[24]); had bool[] := array_fill(false, ARRAY[24]); ms bigint;
  all_s int[] := '{}'; back int8range[] := '{}';
BEGIN
  at_least := false;
  FOREACH t IN ARRAY p_events LOOP
    IF strpos(t, '"kind":"undone"') > 0 THEN
      back := back || int8range((t::json->>'ref')::bigint, (t::json->>'seq')::bigint);
    END IF;
  END LOOP;
  FOREACH t IN ARRAY p_events LOOP
    SELECT * INTO e FROM json_to_record(t::json)
      x(kind text, seq bigint, wall_ms bigint, digit int, other int, n int, what text, boot int, boot_ms bigint);
    CONTINUE WHEN cardinality(back) > 0 AND EXISTS (SELECT FROM unnest(back) b WHERE e.seq <@ b);
    CONTINUE WHEN e.digit IS NULL OR e.digit NOT BETWEEN 1 AND 24;
    CASE e.kind
    WHEN 'digit-on', 'digit-maybe-on' THEN
      IF on_ms[e.digit] IS NULL THEN on_ms[e.digit] := e.boot_ms; on_boot[e.digit] := e.boot; was_ms[e.digit] := e.wall_ms; END IF;
      had[e.digit] := had[e.digit] OR e.kind = 'digit-on';
    WHEN 'digit-not-on', 'digit-never-on' THEN on_ms[e.digit] := NULL;
    WHEN 'digit-off' THEN
      IF on_ms[e.digit] IS NOT NULL THEN
        ms := CASE WHEN on_boot[e.digit] = e.boot THEN e.boot_ms - on_ms[e.digit] ELSE greatest(0, e.wall_ms - was_ms[e.digit]) END;
        at_least := at_least OR on_boot[e.digit] <> e.boot;
        all_s := all_s || (ms / 1000)::int; last_s[e.digit] := cardinality(all_s); on_ms[e.digit] := NULL; had[e.digit] := true;
      END IF;
    WHEN 'digit-still-on' THEN -- the clock never stopped
      IF last_s[e.digit] > 0 AND on_ms[e.digit] IS NULL THEN
        on_ms[e.digit] := e.boot_ms - (all_s[last_s[e.digit]]::bigint * 1000); on_boot[e.digit] := e.boot;
        was_ms[e.digit] := e.wall_ms - (all_s[last_s[e.digit]]::bigint * 1000); all_s[last_s[e.digit]] := -1;
      END IF;
    WHEN 'digit-earlier' THEN
      IF e.what = 'off' OR e.what = '2' THEN
        IF last_s[e.digit] > 0 THEN all_s[last_s[e.digit]] := greatest(0, all_s[last_s[e.digit]] - e.n * 60); END IF;
      ELSIF on_ms[e.digit] IS NOT NULL THEN
        on_ms[e.digit] := on_ms[e.digit] - e.n * 60000; was_ms[e.digit] := was_ms[e.digit] - e.n * 60000;
      END IF;
    WHEN 'digit-moved' THEN
      IF e.other BETWEEN 1 AND 24 THEN
        on_ms[e.other] := on_ms[e.digit]; on_boot[e.other] := on_boot[e.digit]; was_ms[e.other] := was_ms[e.digit];
        last_s[e.other] := last_s[e.digit]; had[e.other] := had[e.digit];
        on_ms[e.digit] := NULL; last_s[e.digit] := 0; had[e.digit] := false;
      END IF;
    ELSE NULL;
    END CASE;
  END LOOP;
  SELECT count(*) INTO digits FROM unnest(had) h WHERE h;
  SELECT count(*), max(s) INTO count, longest_s FROM unnest(all_s) s WHERE s >= 0;
  at_least := at_least OR EXISTS (SELECT FROM unnest(on_ms) o WHERE o IS NOT NULL);
END $$;

-- What the rows of these cases must be.
CREATE FUNCTION summary_of(p_station int, p_case int[]) RETURNS SETOF case_summary
LANGUAGE sql STABLE SET search_path = bt, pg_catalog, pg_temp AS $$
  SELECT p_station, a.case_no, a.room, a.single, a.opened_ms, a.ended_ms, a.outcome, a.events, a.items, a.lots,
    coalesce(d.digits, 0), coalesce(d.count, 0), d.longest_s, coalesce(d.at_least, false),
    a.discrepancies, a.refused, a.keyed, a.late, a.undone, a.slips, a.slips_seen, a.found_after
  FROM (
    SELECT e.case_no, max(e.room) FILTER (WHERE e.kind = 'case-opened') AS room,
      coalesce(bool_or((e.payload::json->>'n') = '1') FILTER (WHERE e.kind = 'case-opened'), false) AS single,
      min(e.wall_ms) FILTER (WHERE e.kind = 'case-opened') AS opened_ms,
      max(e.wall_ms) FILTER (WHERE e.kind = 'case-ended') AS ended_ms,
      max(e.payload::json->>'what') FILTER (WHERE e.kind = 'case-ended') AS outcome,
      count(*)::int AS events,
      coalesce(sum((e.payload::json->>'n')::int) FILTER (WHERE e.kind IN ('item-in', 'extra-item')), 0)::int AS items,
      coalesce(array_agg(DISTINCT e.payload::json->'thing'->>'lot')
        FILTER (WHERE e.kind IN ('item-in', 'extra-item') AND strpos(e.payload, '"lot":') > 0), '{}') AS lots,
      count(*) FILTER (WHERE e.kind = 'discrepancy' AND strpos(e.payload, '"n":1,') > 0)::int AS discrepancies,
      count(*) FILTER (WHERE e.kind = 'refused')::int AS refused,
      count(*) FILTER (WHERE strpos(e.payload, ',"first":true,') > 0 AND strpos(e.payload, ',"keyed":true,') > 0)::int AS keyed,
      count(*) FILTER (WHERE strpos(e.payload, ',"first":true,') > 0 AND strpos(e.payload, ',"late":true,') > 0)::int AS late,
      count(*) FILTER (WHERE e.kind = 'undone')::int AS undone,
      count(DISTINCT e.payload::json->>'n') FILTER (WHERE e.kind = 'slip-queued')::int AS slips,
      count(DISTINCT e.payload::json->>'n') FILTER (WHERE e.kind = 'slip-state' AND strpos(e.payload, '"what":"seen"') > 0)::int
        AS slips_seen,
      count(*) FILTER (WHERE e.kind = 'found-after')::int AS found_after,
      array_agg(e.payload ORDER BY e.seq) FILTER (WHERE e.kind IN ('digit-on', 'digit-maybe-on', 'digit-off', 'digit-not-on',
        'digit-never-on', 'digit-still-on', 'digit-earlier', 'digit-moved', 'undone')) AS of_digits
    FROM event e WHERE e.station = p_station AND e.case_no = ANY (p_case) AND e.case_no > 0 GROUP BY e.case_no) a
  LEFT JOIN LATERAL stretches(a.of_digits) d ON a.of_digits IS NOT NULL
  WHERE a.opened_ms IS NOT NULL $$;
CREATE FUNCTION summarise(p_station int, p_case int[]) RETURNS void
LANGUAGE sql SET search_path = bt, pg_catalog, pg_temp AS $$
  INSERT INTO case_summary SELECT * FROM summary_of(p_station, p_case)
  ON CONFLICT (station, case_no) DO UPDATE SET
    room = excluded.room, single = excluded.single, opened_ms = excluded.opened_ms, ended_ms = excluded.ended_ms,
    outcome = excluded.outcome, events = excluded.events, items = excluded.items, lots = excluded.lots,
    digits = excluded.digits, stretches = excluded.stretches, longest_s = excluded.longest_s, at_least = excluded.at_least,
    discrepancies = excluded.discrepancies, refused = excluded.refused, keyed = excluded.keyed, late = excluded.late,
    undone = excluded.undone, slips = excluded.slips, slips_seen = excluded.slips_seen, found_after = excluded.found_after $$;

-- enable_seqscan: a plan that is kept from when the store was small would read all of it at each batch.
CREATE OR REPLACE FUNCTION after_append() RETURNS trigger LANGUAGE plpgsql
SET search_path = bt, pg_catalog, pg_temp SET enable_seqscan = off AS $$
DECLARE touched int[];
BEGIN
  PERFORM note_used(NEW.station, NEW.incarnation, OLD.last_seq + 1, NEW.last_seq);
  SELECT array_agg(t.case_no) INTO touched FROM (
    SELECT e.case_no, bool_or(e.kind IN ('case-opened', 'case-ended')) AS edge FROM event e
    WHERE e.station = NEW.station AND e.incarnation = NEW.incarnation AND e.seq BETWEEN OLD.last_seq + 1 AND NEW.last_seq
      AND e.case_no > 0 GROUP BY e.case_no) t
    WHERE t.edge OR EXISTS (SELECT FROM case_summary c WHERE c.station = NEW.station AND c.case_no = t.case_no
      AND c.ended_ms IS NOT NULL);
  IF touched IS NOT NULL THEN PERFORM summarise(NEW.station, touched); END IF;
  RETURN NULL;
END $$;

ALTER TABLE case_summary ENABLE ROW LEVEL SECURITY;
CREATE POLICY of_reader ON case_summary FOR SELECT TO bt_reader USING (station = ANY ((SELECT my_stations())::int[]));
GRANT SELECT ON case_summary TO bt_reader;

-- For reports: each case with its station, and a row a month and room.
CREATE VIEW cases WITH (security_invoker) AS
  SELECT s.site, s.number AS station_number, c.* FROM case_summary c JOIN station s ON s.id = c.station;
CREATE VIEW months WITH (security_invoker) AS
  SELECT s.site, s.number AS station_number, c.room, date_trunc('month', to_timestamp(c.opened_ms / 1000.0)) AS month,
    count(*) AS cases, count(*) FILTER (WHERE c.outcome = 'reconciled') AS reconciled,
    count(*) FILTER (WHERE c.outcome = 'unresolved') AS unresolved, count(*) FILTER (WHERE c.discrepancies > 0) AS with_discrepancy,
    count(*) FILTER (WHERE c.slips_seen < c.slips) AS slips_not_seen, sum(c.found_after) AS found_after,
    percentile_cont(0.5) WITHIN GROUP (ORDER BY c.longest_s / 60.0) AS minutes_median,
    percentile_cont(0.95) WITHIN GROUP (ORDER BY c.longest_s / 60.0) AS minutes_p95, max(c.longest_s) / 60 AS minutes_longest
  FROM case_summary c JOIN station s ON s.id = c.station GROUP BY 1, 2, 3, 4;
GRANT SELECT ON cases, months TO bt_reader;

-- Where the row of a case that has ended is otherwise than its events say: nowhere. Reads all events; for the night.
CREATE FUNCTION summary_differs() RETURNS TABLE (station int, case_no int)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = bt, pg_catalog, pg_temp AS $$
  SELECT coalesce(c.station, m.station), coalesce(c.case_no, m.case_no) FROM case_summary c
  FULL JOIN (SELECT o.* FROM station s, summary_of(s.id,
      (SELECT array_agg(DISTINCT e.case_no) FROM event e WHERE e.station = s.id AND e.case_no > 0)) o) m
    ON c.station = m.station AND c.case_no = m.case_no
  WHERE c IS DISTINCT FROM m AND (c.ended_ms IS NOT NULL OR m.ended_ms IS NOT NULL) ORDER BY 1, 2 $$;
GRANT EXECUTE ON FUNCTION summary_differs TO bt_reader;
INSERT INTO version VALUES (3);
COMMIT;
\endif

------------------------------------------------------------------------------------------------------------------------
-- 4: what left a station's record for its archive before this store was there.
SELECT NOT EXISTS (SELECT FROM bt.version WHERE step = 4) AS to_do \gset
\if :to_do
BEGIN;
SET LOCAL ROLE bt_owner;
SET LOCAL search_path = bt;

-- Events that a station cannot send any more, and the hash of the last of them, behind which its chain goes on. An event
-- 'archived' with its seal says in the record that they left, and what its archive is called; it comes behind them.
CREATE TABLE gone (
  station int NOT NULL, incarnation int NOT NULL, first_seq bigint NOT NULL, last_seq bigint NOT NULL, hash bytea NOT NULL,
  at timestamptz NOT NULL DEFAULT now(), PRIMARY KEY (station, incarnation, last_seq), CHECK (first_seq <= last_seq));
CREATE TRIGGER no_change BEFORE UPDATE OR DELETE OR TRUNCATE ON gone FOR EACH STATEMENT EXECUTE FUNCTION no_change();

-- The events after p_after to p_last have left. status: ok (goes on behind last_seq), gap (send from last_seq + 1 on), fork
-- (under p_last there is another event), begin (this incarnation is not known). What is here already stays.
CREATE FUNCTION skip(p_number int, p_incarnation int, p_after bigint, p_last bigint, p_hash bytea,
  OUT status text, OUT last_seq bigint, OUT last_hash bytea)
LANGUAGE plpgsql SECURITY DEFINER SET search_path = bt, pg_catalog, pg_temp AS $$
DECLARE s int := station_of(p_number);
BEGIN
  SELECT d.last_seq, d.last_hash INTO last_seq, last_hash FROM head d
    WHERE d.station = s AND d.incarnation = p_incarnation FOR UPDATE;
  IF NOT FOUND THEN status := 'begin'; RETURN; END IF;
  IF p_after > last_seq OR p_last < last_seq OR length(p_hash) IS DISTINCT FROM 32 THEN status := 'gap'; RETURN; END IF;
  IF p_last = last_seq THEN
    status := CASE WHEN last_hash = p_hash THEN 'ok' ELSE 'fork' END;
    IF status = 'fork' THEN PERFORM note_incident(s, p_incarnation, p_last, 'fork', last_hash, p_hash); END IF;
    RETURN;
  END IF;
  INSERT INTO gone VALUES (s, p_incarnation, last_seq + 1, p_last, p_hash);
  UPDATE head d SET last_seq = p_last, last_hash = p_hash, at = now() WHERE d.station = s AND d.incarnation = p_incarnation;
  status := 'ok'; last_seq := p_last; last_hash := p_hash;
END $$;

-- As before, and: what left is followed by the event that says so; no event is missing but those.
CREATE OR REPLACE FUNCTION broken() RETURNS TABLE (station int, incarnation int, seq bigint)
LANGUAGE sql SECURITY DEFINER SET search_path = bt, pg_catalog, pg_temp AS $$
  WITH links AS (
    SELECT e.station, e.incarnation, e.seq AS first, e.seq, e.hash, e.payload FROM event e
    UNION ALL SELECT g.station, g.incarnation, g.first_seq, g.last_seq, g.hash, NULL FROM gone g),
  chained AS (
    SELECT e.*, h.base_seq, lag(e.seq) OVER w AS before, lag(e.hash) OVER w AS prev
    FROM links e LEFT JOIN head h USING (station, incarnation)
    WINDOW w AS (PARTITION BY e.station, e.incarnation ORDER BY e.seq)),
  based AS (
    SELECT c.*, coalesce(c.before, c.base_seq) AS follows,
           coalesce(c.prev, CASE WHEN c.base_seq = 0 THEN decode(repeat('00', 32), 'hex') ELSE
             (SELECT o.hash FROM event o WHERE o.station = c.station AND o.seq = c.base_seq AND o.incarnation < c.incarnation
                AND sha256(o.hash || convert_to(c.payload, 'UTF8')) = c.hash LIMIT 1) END) AS onto
    FROM chained c)
  SELECT b.station, b.incarnation, b.seq FROM based b
  WHERE b.follows IS DISTINCT FROM b.first - 1
    OR (b.payload IS NOT NULL AND sha256(b.onto || convert_to(b.payload, 'UTF8')) IS DISTINCT FROM b.hash)
  UNION ALL -- the end cut off
  SELECT h.station, h.incarnation, h.last_seq FROM head h WHERE h.last_seq > h.base_seq AND NOT EXISTS (
    SELECT FROM links e WHERE e.station = h.station AND e.incarnation = h.incarnation AND e.seq = h.last_seq
      AND e.hash = h.last_hash)
  UNION ALL -- nothing says that it left, though events behind it are here
  SELECT g.station, g.incarnation, g.last_seq FROM gone g
  WHERE EXISTS (SELECT FROM head h WHERE h.station = g.station AND h.incarnation = g.incarnation
                  AND h.at < now() - interval '1 day')
    AND NOT EXISTS (SELECT FROM event e WHERE e.station = g.station AND e.seq > g.last_seq AND e.kind = 'archived')
  ORDER BY 1, 2, 3 $$;

ALTER TABLE gone ENABLE ROW LEVEL SECURITY;
CREATE POLICY of_reader ON gone FOR SELECT TO bt_reader USING (station = ANY ((SELECT my_stations())::int[]));
GRANT SELECT ON gone TO bt_reader;
GRANT EXECUTE ON FUNCTION skip TO bt_station;
INSERT INTO version VALUES (4);
COMMIT;
\endif

------------------------------------------------------------------------------------------------------------------------
-- 5: one item in two rooms, told also where both stations send it at the same moment. Whoever's row waits for the other's sees
-- that row with its next statement only, so that the rows are put down by one and looked at by another.
SELECT NOT EXISTS (SELECT FROM bt.version WHERE step = 5) AS to_do \gset
\if :to_do
BEGIN;
SET LOCAL ROLE bt_owner;
SET LOCAL search_path = bt;

CREATE TYPE item_used AS (identity text, line text, lot text, case_no int, seq bigint);
CREATE OR REPLACE FUNCTION note_used(p_station int, p_incarnation int, p_first bigint, p_last bigint) RETURNS void
LANGUAGE plpgsql SET search_path = bt, pg_catalog, pg_temp AS $$
DECLARE t record; items item_used[]; mine text := (SELECT site FROM station WHERE id = p_station);
BEGIN
  SELECT array_agg(ROW(n.*)::item_used) INTO items FROM (
    SELECT DISTINCT ON (x.thing->>'identity') x.thing->>'identity' AS identity, x.thing->>'line', x.thing->>'lot',
           e.case_no, e.seq
    FROM event e, json_to_record(e.payload::json) x(thing json)
    WHERE e.station = p_station AND e.incarnation = p_incarnation AND e.seq BETWEEN p_first AND p_last
      AND e.kind = 'item-used' AND x.thing->>'identity' <> '' AND x.thing->>'single_use' = '1'
    ORDER BY x.thing->>'identity', e.seq) n;
  IF items IS NULL THEN RETURN; END IF;
  INSERT INTO used SELECT mine, n.identity, p_station, n.case_no, p_incarnation, n.seq FROM unnest(items) n
    ORDER BY n.identity ON CONFLICT DO NOTHING;
  FOR t IN
    SELECT n.*, u.station AS first_station, u.case_no AS first_case FROM unnest(items) n
    JOIN used u ON u.site = mine AND u.identity = n.identity
    WHERE (u.station, u.case_no) <> (p_station, n.case_no)
  LOOP
    PERFORM note_incident(p_station, p_incarnation, t.seq, 'twice', NULL, NULL);
    PERFORM publish_as(mine, 'twice', json_build_object('identity', t.identity, 'line', coalesce(t.line, ''),
      'lot', coalesce(t.lot, ''), 'first', json_build_object('station', (SELECT number FROM station WHERE id = t.first_station),
      'case', t.first_case), 'second', json_build_object('station', (SELECT number FROM station WHERE id = p_station),
      'case', t.case_no))::text, 'store');
  END LOOP;
END $$;
INSERT INTO version VALUES (5);
COMMIT;
\endif

------------------------------------------------------------------------------------------------------------------------
-- 6: which items were used at the other stations of a site; and an append that reads what it kept once instead of twice.
SELECT NOT EXISTS (SELECT FROM bt.version WHERE step = 6) AS to_do \gset
\if :to_do
BEGIN;
SET LOCAL ROLE bt_owner;
SET LOCAL search_path = bt;

-- A further kind of entry, from the store itself:
--   used {identity, station, case}: an item of a single use, and the case that used it
ALTER TABLE list DROP CONSTRAINT list_kind_check;
ALTER TABLE list ADD CONSTRAINT list_kind_check
  CHECK (kind IN ('recall', 'release', 'line', 'staff', 'withdraw', 'twice', 'used'));

-- As before, and: what was used in the last thirty days is told to the site's stations. An older item is no pack that lies
-- about, and a store that gets the work of years tells nobody about all of it; nor does a region's, where no station asks. Rows of `used` come first, then the list, which
-- waits for whoever writes to it, so that two who do both never wait for each other.
CREATE OR REPLACE FUNCTION note_used(p_station int, p_incarnation int, p_first bigint, p_last bigint) RETURNS void
LANGUAGE plpgsql SET search_path = bt, pg_catalog, pg_temp AS $$
DECLARE
  t record; items item_used[]; mine text; own int;
  since bigint := (extract(epoch FROM now() - interval '30 days') * 1000)::bigint;
BEGIN
  SELECT array_agg(ROW(n.*)::item_used) INTO items FROM (
    SELECT DISTINCT ON (x.thing->>'identity') x.thing->>'identity' AS identity, x.thing->>'line', x.thing->>'lot',
           e.case_no, e.seq
    FROM event e, json_to_record(e.payload::json) x(thing json)
    WHERE e.station = p_station AND e.incarnation = p_incarnation AND e.seq BETWEEN p_first AND p_last
      AND e.kind = 'item-used' AND x.thing->>'identity' <> '' AND x.thing->>'single_use' = '1'
    ORDER BY x.thing->>'identity', e.seq) n;
  IF items IS NULL THEN RETURN; END IF;
  SELECT site, number INTO mine, own FROM station WHERE id = p_station;
  INSERT INTO used SELECT mine, n.identity, p_station, n.case_no, p_incarnation, n.seq FROM unnest(items) n
    ORDER BY n.identity ON CONFLICT DO NOTHING;
  FOR t IN
    SELECT n.*, u.station AS first_station, u.case_no AS first_case FROM unnest(items) n
    JOIN used u ON u.site = mine AND u.identity = n.identity
    WHERE (u.station, u.case_no) <> (p_station, n.case_no)
  LOOP
    PERFORM note_incident(p_station, p_incarnation, t.seq, 'twice', NULL, NULL);
    PERFORM publish_as(mine, 'twice', json_build_object('identity', t.identity, 'line', coalesce(t.line, ''),
      'lot', coalesce(t.lot, ''), 'first', json_build_object('station', (SELECT number FROM station WHERE id = t.first_station),
      'case', t.first_case), 'second', json_build_object('station', own, 'case', t.case_no))::text, 'store');
  END LOOP;
  IF NOT EXISTS (SELECT FROM event e WHERE e.station = p_station AND e.incarnation = p_incarnation AND e.seq = p_last
                   AND e.wall_ms > since) OR NOT EXISTS (SELECT FROM login WHERE site = mine AND number IS NOT NULL) THEN
    RETURN;
  END IF;
  LOCK TABLE list IN SHARE ROW EXCLUSIVE MODE; -- as publish_as() does
  INSERT INTO list (site, kind, body, origin)
    SELECT mine, 'used', json_build_object('identity', n.identity, 'station', own, 'case', n.case_no)::text, 'store'
    FROM unnest(items) n JOIN used u ON u.site = mine AND u.identity = n.identity
    WHERE (u.station, u.incarnation, u.seq) = (p_station, p_incarnation, n.seq) ORDER BY n.seq;
  IF FOUND THEN PERFORM pg_notify('bt_list', ''); END IF;
END $$;

-- As before, with one reading of the batch. jit: what must be read in order all the same looks dear without seqscan, so dear that
-- each batch would compile it anew, which doubled what an event costs.
CREATE OR REPLACE FUNCTION after_append() RETURNS trigger LANGUAGE plpgsql
SET search_path = bt, pg_catalog, pg_temp SET enable_seqscan = off SET jit = off AS $$
DECLARE touched int[]; edges int[]; any_used bool;
BEGIN
  SELECT array_agg(DISTINCT e.case_no) FILTER (WHERE e.case_no > 0),
         array_agg(DISTINCT e.case_no) FILTER (WHERE e.kind IN ('case-opened', 'case-ended')),
         coalesce(bool_or(e.kind = 'item-used'), false) INTO touched, edges, any_used
    FROM event e
    WHERE e.station = NEW.station AND e.incarnation = NEW.incarnation AND e.seq BETWEEN OLD.last_seq + 1 AND NEW.last_seq;
  SELECT array_agg(t.case_no) INTO touched FROM unnest(touched) t(case_no)
    WHERE t.case_no = ANY (edges) OR EXISTS (SELECT FROM case_summary c WHERE c.station = NEW.station AND c.case_no = t.case_no
      AND c.ended_ms IS NOT NULL);
  IF touched IS NOT NULL THEN PERFORM summarise(NEW.station, touched); END IF;
  IF any_used THEN PERFORM note_used(NEW.station, NEW.incarnation, OLD.last_seq + 1, NEW.last_seq); END IF;
  RETURN NULL;
END $$;

-- As before; the hash before each comes beside it, and is not looked for in the row before.
CREATE OR REPLACE FUNCTION append(p_number int, p_incarnation int, p_first bigint, p_payload text[], p_hash bytea[],
  OUT status text, OUT last_seq bigint, OUT last_hash bytea)
LANGUAGE plpgsql SECURITY DEFINER SET search_path = bt, pg_catalog, pg_temp AS $$
DECLARE s int := station_of(p_number); n int := cardinality(p_payload); k int; done bigint; base bigint; h bytea;
BEGIN
  SELECT d.last_seq, d.last_hash, d.base_seq INTO last_seq, last_hash, base FROM head d
    WHERE d.station = s AND d.incarnation = p_incarnation FOR UPDATE;
  IF NOT FOUND THEN status := 'begin'; RETURN; END IF;
  IF n = 0 OR n IS DISTINCT FROM cardinality(p_hash) OR p_first > last_seq + 1 OR p_first < 1 THEN
    status := 'gap'; RETURN;
  END IF;
  k := least(n, last_seq - p_first + 1);          -- these are here: by the chain, one hash proves them all
  IF k > 0 THEN
    h := CASE WHEN p_first + k - 1 = last_seq THEN last_hash ELSE
      (SELECT e.hash FROM event e WHERE e.station = s AND e.seq = p_first + k - 1
         AND e.incarnation <= p_incarnation AND (e.incarnation = p_incarnation OR e.seq <= base)
       ORDER BY (e.hash = p_hash[k]) DESC LIMIT 1) END;
    IF h IS DISTINCT FROM p_hash[k] THEN
      PERFORM note_incident(s, p_incarnation, p_first + k - 1, 'fork', h, p_hash[k]);
      status := 'fork'; last_hash := h; RETURN;
    END IF;
  END IF;
  status := 'ok';
  IF k = n THEN RETURN; END IF;
  BEGIN
    INSERT INTO event
    SELECT s, p_incarnation, p_first + i - 1, coalesce(x."case", 0), x.kind, coalesce(x.room, 0), x.wall_ms, payload, c.hash
    FROM (SELECT i, payload, u.hash, u.prev
          FROM unnest(p_payload, p_hash, append.last_hash || p_hash) WITH ORDINALITY u(payload, hash, prev, i)
          WHERE i > k AND i <= n) c,
         json_to_record(payload::json) x(seq bigint, "case" int, kind text, room int, wall_ms bigint, station int)
    WHERE sha256(prev || convert_to(payload, 'UTF8')) = c.hash AND x.seq = p_first + i - 1
      AND coalesce(x.station, 0) = p_number;
    GET DIAGNOSTICS done = ROW_COUNT;
    IF done <> n - k THEN RAISE EXCEPTION 'does not follow' USING ERRCODE = 'BT003'; END IF;
  EXCEPTION WHEN SQLSTATE 'BT003' OR data_exception OR not_null_violation THEN
    PERFORM note_incident(s, p_incarnation, p_first + k, 'changed', last_hash, p_hash[k + 1]);
    status := 'changed'; RETURN;
  END;
  last_seq := p_first + n - 1; last_hash := p_hash[n];
  UPDATE head d SET last_seq = append.last_seq, last_hash = append.last_hash, at = now()
    WHERE d.station = s AND d.incarnation = p_incarnation;
END $$;
INSERT INTO version VALUES (6);
COMMIT;
\endif

------------------------------------------------------------------------------------------------------------------------
-- 7: a station that got its number after it had begun to work. What it did until then says number 0, or the one that it had.
SELECT NOT EXISTS (SELECT FROM bt.version WHERE step = 7) AS to_do \gset
\if :to_do
BEGIN;
SET LOCAL ROLE bt_owner;
SET LOCAL search_path = bt;

-- From its first event with its own number on, a station's events say no other one. All that is here was held to that.
ALTER TABLE station ADD COLUMN numbered boolean NOT NULL DEFAULT false;
UPDATE station SET numbered = true WHERE id IN (SELECT h.station FROM head h);

-- Whether another station of this one's site sent the event with this number and hash: then it is that one's record, under
-- another number, and each of its cases would be there twice.
CREATE FUNCTION kept_elsewhere(p_station int, p_seq bigint, p_hash bytea) RETURNS boolean
LANGUAGE sql SET search_path = bt, pg_catalog, pg_temp AS $$
  SELECT EXISTS (
    SELECT FROM station mine JOIN station o ON o.site = mine.site AND o.id <> mine.id
    JOIN head h ON h.station = o.id
    JOIN event e ON e.station = o.id AND e.incarnation = h.incarnation AND e.seq = p_seq AND e.hash = p_hash
    WHERE mine.id = p_station) $$;

-- As before, but for the number that an event says: before the first that says the station's own it may be another; and 0 at any time, which `audit archive` put into what it added, whatever the station's number. The first batch of a station is no other
-- station's (a fork).
CREATE OR REPLACE FUNCTION append(p_number int, p_incarnation int, p_first bigint, p_payload text[], p_hash bytea[],
  OUT status text, OUT last_seq bigint, OUT last_hash bytea)
LANGUAGE plpgsql SECURITY DEFINER SET search_path = bt, pg_catalog, pg_temp AS $$
DECLARE
  s int := station_of(p_number); n int := cardinality(p_payload); k int; done bigint; base bigint; h bytea;
  is_numbered boolean := (SELECT numbered FROM station WHERE id = s);
BEGIN
  SELECT d.last_seq, d.last_hash, d.base_seq INTO last_seq, last_hash, base FROM head d
    WHERE d.station = s AND d.incarnation = p_incarnation FOR UPDATE;
  IF NOT FOUND THEN status := 'begin'; RETURN; END IF;
  IF n = 0 OR n IS DISTINCT FROM cardinality(p_hash) OR p_first > last_seq + 1 OR p_first < 1 THEN
    status := 'gap'; RETURN;
  END IF;
  IF NOT EXISTS (SELECT FROM event e WHERE e.station = s) AND kept_elsewhere(s, p_first, p_hash[1]) THEN
    PERFORM note_incident(s, p_incarnation, p_first, 'fork', NULL, p_hash[1]);
    status := 'fork'; RETURN;
  END IF;
  k := least(n, last_seq - p_first + 1);          -- these are here: by the chain, one hash proves them all
  IF k > 0 THEN
    h := CASE WHEN p_first + k - 1 = last_seq THEN last_hash ELSE
      (SELECT e.hash FROM event e WHERE e.station = s AND e.seq = p_first + k - 1
         AND e.incarnation <= p_incarnation AND (e.incarnation = p_incarnation OR e.seq <= base)
       ORDER BY (e.hash = p_hash[k]) DESC LIMIT 1) END;
    IF h IS DISTINCT FROM p_hash[k] THEN
      PERFORM note_incident(s, p_incarnation, p_first + k - 1, 'fork', h, p_hash[k]);
      status := 'fork'; last_hash := h; RETURN;
    END IF;
  END IF;
  status := 'ok';
  IF k = n THEN RETURN; END IF;
  BEGIN
    INSERT INTO event
    SELECT s, p_incarnation, p_first + i - 1, coalesce(x."case", 0), x.kind, coalesce(x.room, 0), x.wall_ms, payload, c.hash
    FROM (SELECT i, payload, u.hash, u.prev
          FROM unnest(p_payload, p_hash, append.last_hash || p_hash) WITH ORDINALITY u(payload, hash, prev, i)
          WHERE i > k AND i <= n) c,
         json_to_record(payload::json) x(seq bigint, "case" int, kind text, room int, wall_ms bigint, station int)
    WHERE sha256(prev || convert_to(payload, 'UTF8')) = c.hash AND x.seq = p_first + i - 1
      AND (coalesce(x.station, 0) IN (p_number, 0) OR NOT is_numbered);
    GET DIAGNOSTICS done = ROW_COUNT;
    IF done <> n - k THEN RAISE EXCEPTION 'does not follow' USING ERRCODE = 'BT003'; END IF;
  EXCEPTION WHEN SQLSTATE 'BT003' OR data_exception OR not_null_violation THEN
    PERFORM note_incident(s, p_incarnation, p_first + k, 'changed', last_hash, p_hash[k + 1]);
    status := 'changed'; RETURN;
  END;
  IF NOT is_numbered AND EXISTS (SELECT FROM unnest(p_payload) p WHERE coalesce((p::json->>'station')::int, 0) = p_number) THEN
    UPDATE station SET numbered = true WHERE id = s;
  END IF;
  last_seq := p_first + n - 1; last_hash := p_hash[n];
  UPDATE head d SET last_seq = append.last_seq, last_hash = append.last_hash, at = now()
    WHERE d.station = s AND d.incarnation = p_incarnation;
END $$;
INSERT INTO version VALUES (7);
COMMIT;
\endif

------------------------------------------------------------------------------------------------------------------------
-- 8: what a station costs that has nothing to say. It asks for its lists every eight seconds: that asked who it is once for each
-- station that the store knows, so that a thousand of them kept both processors at work. And news of the lists wake those
-- stations that they are for, and no longer all.
SELECT NOT EXISTS (SELECT FROM bt.version WHERE step = 8) AS to_do \gset
\if :to_do
BEGIN;
SET LOCAL ROLE bt_owner;
SET LOCAL search_path = bt;

-- What a notification of bt_list carries: how the names of the roles begin that it is for; '' is for all.
-- add_station() names them; where somebody has named one otherwise, all of them are woken.
CREATE FUNCTION whose_news(p_site text) RETURNS text
LANGUAGE sql STABLE SET search_path = bt, pg_catalog, pg_temp AS $$
  SELECT CASE WHEN bool_or(NOT starts_with(l.role, n.first)) THEN '' ELSE n.first END
  FROM format('station-%s-', lower(p_site)) n(first)
  LEFT JOIN login l ON l.site = p_site AND l.number IS NOT NULL GROUP BY n.first $$;
CREATE OR REPLACE FUNCTION publish_as(p_site text, p_kind text, p_body text, p_origin text) RETURNS bigint
LANGUAGE plpgsql SET search_path = bt, pg_catalog, pg_temp AS $$
DECLARE v bigint;
BEGIN
  LOCK TABLE list IN SHARE ROW EXCLUSIVE MODE;
  INSERT INTO list (site, kind, body, origin) VALUES (p_site, p_kind, p_body, p_origin) RETURNING version INTO v;
  PERFORM pg_notify('bt_list', whose_news(p_site));
  RETURN v;
END $$;
-- As before, but for who is told.
DO $$ BEGIN
  EXECUTE replace(pg_get_functiondef('note_used(int,int,bigint,bigint)'::regprocedure), $x$'bt_list', ''$x$, $x$'bt_list', whose_news(mine)$x$);
  ASSERT pg_get_functiondef('note_used(int,int,bigint,bigint)'::regprocedure) LIKE '%whose_news%';
END $$;

-- As before, and who asks is looked up once.
CREATE OR REPLACE FUNCTION common(p_number int, p_seq bigint[], p_hash bytea[]) RETURNS bigint
LANGUAGE sql SECURITY DEFINER SET search_path = bt, pg_catalog, pg_temp AS $$
  WITH s AS MATERIALIZED (SELECT station_of(p_number) AS id)
  SELECT coalesce(max(e.seq), 0) FROM s, unnest(p_seq, p_hash) u(seq, hash) JOIN event e ON e.seq = u.seq AND e.hash = u.hash
  WHERE e.station = s.id AND e.incarnation IN (SELECT h.incarnation FROM head h WHERE h.station = s.id) $$;
CREATE OR REPLACE FUNCTION lists(p_number int, p_after bigint, p_limit int)
RETURNS TABLE (version bigint, origin text, kind text, body text, last bigint)
LANGUAGE plpgsql SECURITY DEFINER SET search_path = bt, pg_catalog, pg_temp AS $$
#variable_conflict use_column
DECLARE own int := station_of(p_number); mine text := (SELECT s.site FROM station s WHERE s.id = own); top bigint;
BEGIN
  top := coalesce((SELECT max(l.version) FROM list l WHERE l.site = mine), 0);
  RETURN QUERY SELECT l.version, l.origin, l.kind, l.body, top FROM list l
    WHERE l.site = mine AND l.version > p_after ORDER BY l.version LIMIT p_limit;
  IF NOT FOUND THEN RETURN QUERY SELECT NULL::bigint, NULL::text, NULL::text, NULL::text, top; END IF;
END $$;
INSERT INTO version VALUES (8);
COMMIT;
\endif
