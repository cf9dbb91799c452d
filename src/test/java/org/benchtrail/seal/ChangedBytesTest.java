package org.benchtrail.seal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.math.BigInteger;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.core.integrity.Keys;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.integrity.SigningKey;
import org.benchtrail.core.integrity.VerifierKey;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.seal.VerificationRows.Finding;
import org.benchtrail.seal.timestamp.TestAuthority;
import org.benchtrail.seal.timestamp.TimeStamp;
import org.benchtrail.seal.timestamp.TimeStampRequest;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.TicketActs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/**
 * Single bytes changed by whoever owns the database, spread over every table that the log is kept in and every table that it seals:
 * the look at the whole site names each with table and row. Some dozens in every build; {@code -Dseal.changes=10000} as many as one
 * likes, from {@code -Dseal.seed}.
 */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class ChangedBytesTest {
    private static final Actor SUE = new Actor("bytes-sue", "Sue", Set.of(Role.SUPERVISOR));
    private static final int AT_ONCE = 120;
    private static final int OF_A_TABLE = 8;

    /** Tables of the log, and of what it seals. */
    private static final List<String> TABLES = List.of(
            "trail_entry",
            "ticket",
            "ticket_counter",
            "attachment",
            "file_record",
            "disclosure",
            "site_record",
            "stream_head",
            "seal_queue",
            "seal_leaf",
            "seal_node",
            "seal_head",
            "checkpoint",
            "cosignature",
            "time_stamp",
            "account",
            "account_record",
            "api_token",
            "requester",
            "shop_case",
            "shop_case_record",
            "catalogue_version",
            "known_cause",
            "known_cause_change",
            "site_limit",
            "site_version",
            "forecast_erasure",
            "erased_words",
            "audit_act",
            "export_given",
            "mending",
            "chart_baseline",
            "coach_trial",
            "coach_trial_result");

    /** Tables of the log in which a change says nothing of what was done: each with the reason. */
    private static final Map<String, String> LEFT_OUT = Map.of(
            "seal_stuck", "kept to be looked into; what stands in it is not sealed, and that is named where it belongs",
            "lost_leaf",
                    "a record that is gone is found with its mark and without it; the mark only tells how it was lost",
            "witness_event", "answers of witnesses as they came; what one signed stands in cosignature",
            "verification_run", "what an earlier look said; another look says it again",
            "verification_finding", "what an earlier look said; another look says it again");

    /** Columns that nothing seals, because they say nothing of what was done: each with the reason. */
    private static final Map<String, String> OUTSIDE = Map.ofEntries(
            Map.entry("ticket.clock", "made anew from the trail; the due time that it gives is compared"),
            Map.entry("ticket.site_version", "by which decision the due time was made; the due time is compared"),
            Map.entry("mending.file", "proves itself entry by entry, and is gone when the proposal has ended"),
            Map.entry("checkpoint.signed_at", "the server's own word; the time that counts is the witness's"),
            Map.entry("account.zone", "how times are shown to that person"),
            Map.entry("account.failed_attempts", "counts of the moment"),
            Map.entry("account.locked_until", "of the moment"),
            Map.entry("account.session_version", "ends sign-ins, and gives nothing"),
            Map.entry("api_token.last_used", "of the moment"),
            Map.entry("known_cause.confirmations", "counted anew from what is confirmed"),
            Map.entry("known_cause.measured", "counted anew"),
            Map.entry("known_cause.last_confirmed", "counted anew"),
            Map.entry("known_cause.confirmed_by", "counted anew"),
            Map.entry("known_cause.search", "made anew from the words"));

    @Inject
    PeopleActs people;

    @Inject
    TicketActs tickets;

    @Inject
    SealJob job;

    @Inject
    SiteVerification verification;

    @Inject
    VerificationRows runs;

    @Inject
    LogRows log;

    @Inject
    TimeStampRows stamps;

    @Inject
    Clock clock;

    private static Connection asking;
    private final Map<String, List<String>> places = new TreeMap<>();
    private final Map<String, Map<String, String>> columns = new TreeMap<>();
    private final int asked = Integer.getInteger("seal.changes", 60);
    private final SplittableRandom random = new SplittableRandom(Long.getLong("seal.seed", 20));
    private final Map<String, Integer> named = new TreeMap<>();
    private final Map<String, Integer> untouched = new TreeMap<>();
    private final List<String> unnamed = new ArrayList<>();
    private int looks;

    @Test
    @Timeout(value = 3, unit = TimeUnit.HOURS)
    void everyChangedByte_isNamedWithTableAndRow_orWaitsToBeSealed() throws SQLException {
        String alarms = "0";
        try (Connection owner = TestDatabase.owner()) {
            asking = owner;
            alarms = one("select coalesce(max(id), 0)::text from alarm");
            fill();
            Set<Finding> before = look();
            int done = 0;
            int waiting = 0;
            while (done < asked) {
                List<ChangedByte> batch = new ArrayList<>();
                Set<Finding> found;
                try {
                    fill(batch, owner, Math.min(AT_ONCE, asked - done));
                    found = look();
                } finally {
                    batch = takenBack(owner, batch);
                }
                done += batch.size();
                List<ChangedByte> hidden = notNamed(batch, found, before);
                waiting += (int) hidden.stream().filter(ChangedBytesTest::waits).count();
                hidden.removeIf(ChangedBytesTest::waits);
                hidden = askedAgain(owner, hidden, before);
                hidden.forEach(change -> unnamed.add(change.toString()));
            }
            assertEquals(before, look(), "all was put back");
            System.out.println("changed bytes: " + done + ", named: "
                    + named.values().stream().mapToInt(i -> i).sum() + ", not sealed yet: " + waiting + ", neither: "
                    + unnamed.size() + "; further looks " + looks + "; by table " + named + "; tables without a row "
                    + untouched.keySet());
            unnamed.stream().limit(40).forEach(System.out::println);
        } finally {
            TestDatabase.run("alter table alarm disable trigger user");
            TestDatabase.run("delete from alarm where id > " + alarms);
            TestDatabase.run("alter table alarm enable trigger user");
            job.round();
        }
        assertTrue(unnamed.isEmpty(), () -> unnamed.size() + " changes were not named, the first: " + unnamed.get(0));
        assertEquals("", job.stopped());
    }

    @Test
    void everyTableOfTheLog_isAskedOfOrLeftOutWithAReason() throws SQLException {
        try (Connection owner = TestDatabase.owner()) {
            asking = owner;
            List<String> of = all(
                    "select tablename from pg_tables where schemaname = 'public'"
                            + " and tablename ~ '^(seal|stream|site_record|disclosure|file_record|lost|checkpoint|cosign|time_stamp|witness|verification)'");
            assertTrue(of.size() >= 16, of::toString);
            assertEquals(
                    List.of(),
                    of.stream()
                            .filter(table -> TABLES.contains(table) == LEFT_OUT.containsKey(table))
                            .toList());
        }
    }

    /** Rows in as many tables as a few acts give, all sealed and signed but one. */
    private void fill() {
        people.ensureAccount(SUE.account(), SUE.name(), SUE.roles(), "a long enough password");
        people.createToken(SUE, "bytes", 1);
        for (int i = 0; i < 12; i++) {
            ticket("Bea " + i);
            if (i % 4 == 0) {
                people.createToken(SUE, "bytes " + i, 1);
                job.round();
            }
        }
        TestDatabase.run("insert into attachment (sha256, content) values (encode(sha256('bytes'), 'hex'), 'bytes')"
                + " on conflict do nothing");
        TestDatabase.run(
                "insert into site_limit (id, quantity, unit, upper, source, note, added, added_by, retired, retired_by)"
                        + " values ('bytes-limit', 'voltage', 'V', 12.5, 'own', 'a note', now(), 'bytes-sue', now(), 'bytes-two')"
                        + " on conflict do nothing");
        TestDatabase.run(
                "insert into known_cause (title, category, shows, apart, cure, state, proposed, proposed_by, version,"
                        + " changed) values ('Bytes', 'HEAT', 'shows', 'apart', 'cure', 'RETIRED', now(), 'bytes-sue', 1, now())");
        TestDatabase.run(
                "insert into known_cause_change (cause, version, at, who, what, reason, after) select max(id), 1, now(),"
                        + " 'bytes-sue', 'proposed', 'a reason', 'after' from known_cause");
        TestDatabase.run(
                "insert into shop_case_record (at, who, what, ticket, detail) values (now(), 'bytes-sue', 'left out',"
                        + " 40718, 'why')");
        TestDatabase.run(
                "insert into shop_case (ticket, closed_at, state, reason) select max(serial), now(), 'LEFT_OUT', 'bytes'"
                        + " from ticket");
        TestDatabase.run("insert into forecast_erasure (ticket, entry, at) values (40718, 1, now())");
        TestDatabase.run(
                "insert into chart_baseline (place, begins, ends, points, outside, centre, spread, rules, reason,"
                        + " frozen_by, frozen_at) values ('bytes place', '2001-01-01', '2001-02-01', 20, 0, '1', '1', 'FEW', 'why',"
                        + " 'bytes-sue', now())");
        TestDatabase.run(
                "insert into coach_trial (stated_by, stated_at, question, margin, expected, correlation, occasions,"
                        + " people, jobs_each, order_seed, devices, stop_rule, left_out, analysis) values ('bytes-sue', now(), 'why', 10,"
                        + " 80, 20, 4, 10, 4, repeat('a', 64), repeat('b', 64), 'at the size', 'nobody', 'as stated')");
        TestDatabase.run("insert into coach_trial_result (trial, at, people, difference, error, upper, not_worse)"
                + " select max(id), now(), 10, '0.05', '0.02', '0.09', true from coach_trial");
        if (one("select n::text from seal_node limit 1").isEmpty()) {
            TestDatabase.run(
                    "insert into forecast_erasure (ticket, entry, at) select 40718, n, now() from generate_series(1, 256) n");
        }
        job.round();
        job.round();
        assertEquals("", job.stopped());
        witnessed();
        stamped();
        people.createToken(SUE, "not sealed yet", 1);
    }

    private void ticket(String requester) {
        NewTicket report = new NewTicket(
                "A fan that rattles",
                "It rattles",
                Category.HEAT,
                "Laptop",
                "Desk 4",
                requester,
                "room 4",
                Priority.Impact.ONE_PERSON,
                Priority.Urgency.CAN_WAIT,
                true);
        tickets.open(report, SUE);
    }

    /** A witness has signed some heads. */
    private void witnessed() {
        SigningKey witness = new SigningKey("bytes.example/w", VerifierKey.WITNESS, Keys.TEST_2);
        for (LogRows.Signed head : QuarkusTransaction.requiringNew().call(() -> log.headsFrom(Long.MAX_VALUE, 5))) {
            String text = SignedNote.parse(head.note()).text();
            long at = clock.instant().getEpochSecond();
            assertTrue(Checkpoint.parse(text).size() > 0);
            TestDatabase.run(
                    "insert into cosignature (size, key, at, line) values (?, ?, to_timestamp(?), ?) on conflict do nothing",
                    head.size(),
                    witness.verifier().toString(),
                    at,
                    witness.cosign(text, at).toString());
        }
    }

    /** An authority has stamped the newest head. */
    private void stamped() {
        LogRows.Signed head =
                QuarkusTransaction.requiringNew().call(log::newest).orElseThrow();
        Hash imprint = TimeStampRequest.imprint(SignedNote.parse(head.note()).text());
        byte[] answer =
                new TestAuthority().answer(new TimeStampRequest(imprint, BigInteger.valueOf(head.size())).der());
        TimeStamp stamp = new TimeStamp(TestAuthority.NOW, "CN=Test Authority");
        QuarkusTransaction.requiringNew().run(() -> stamps.keep(head.size(), stamp, answer));
    }

    private static final String IDENTITIES =
            "select attrelid::regclass || ' alter column ' || attname from pg_attribute where"
                    + " attidentity <> '' and attrelid = to_regclass('%s')";

    private static void guarded(boolean guarded) {
        for (String table : TABLES) {
            TestDatabase.run("alter table " + table + (guarded ? " enable" : " disable") + " trigger user");
            all(String.format(IDENTITIES, table))
                    .forEach(column -> TestDatabase.run(
                            "alter table " + column + " set generated " + (guarded ? "always" : "by default")));
        }
    }

    private void fill(List<ChangedByte> batch, Connection owner, int most) throws SQLException {
        Set<String> taken = new HashSet<>();
        places.clear();
        guarded(false);
        for (int round = 0; round < OF_A_TABLE && batch.size() < most; round++) {
            List<String> order = new ArrayList<>(TABLES);
            Collections.shuffle(order, new java.util.Random(random.nextLong()));
            for (String table : order) {
                ChangedByte change = batch.size() < most ? change(owner, table, taken) : null;
                if (change != null) {
                    batch.add(change);
                }
            }
        }
    }

    private ChangedByte change(Connection owner, String table, Set<String> taken) throws SQLException {
        List<String> rows = places.computeIfAbsent(table, t -> all("select ctid::text from " + t + " order by ctid"));
        if (rows.isEmpty()) {
            untouched.put(table, 0);
            return null;
        }
        if (!columns.containsKey(table)) {
            columns.put(table, ChangedByte.columns(owner, table));
        }
        List<String> sealed = columns.get(table).keySet().stream()
                .filter(column -> !OUTSIDE.containsKey(table + "." + column))
                .toList();
        for (int i = 0; i < 20; i++) {
            String ctid = rows.get(random.nextInt(rows.size()));
            String about = about(table, ctid);
            if (!taken.contains(about)) {
                String column = sealed.get(random.nextInt(sealed.size()));
                ChangedByte change = ChangedByte.make(owner, table, ctid, column, columns.get(table), random);
                if (change != null) {
                    rows.remove(ctid);
                    taken.add(about);
                    taken.add(about(table, change.ctid()));
                    return change;
                }
            }
        }
        return null;
    }

    /** Of one ticket one thing at a time, of one row, and of a record with its leaf; where several are wrong, the first is named. */
    private static String about(String table, String ctid) {
        return switch (table) {
            case "trail_entry" -> "ticket " + one("select ticket::text from trail_entry where ctid = '" + ctid + "'");
            case "ticket" -> "ticket " + one("select serial::text from ticket where ctid = '" + ctid + "'");
            case "disclosure" -> one("select about from disclosure where ctid = '" + ctid + "'");
            case "site_record", "seal_leaf", "stream_head" -> {
                String place = one("select stream || ' ' || place from " + table + " where ctid = '" + ctid + "'");
                yield place.startsWith("keys ") ? "keys" : place;
            }
            default -> ChangedBytesTest.keyed(table, ctid);
        };
    }

    private static String keyed(String table, String ctid) {
        return table + " "
                + one("select coalesce(to_jsonb(t) ->> 'id', to_jsonb(t) ->> 'number', ctid::text) from " + table
                        + " t where ctid = '" + ctid + "'");
    }

    private static List<ChangedByte> takenBack(Connection owner, List<ChangedByte> batch) throws SQLException {
        List<ChangedByte> taken = new ArrayList<>();
        for (int i = batch.size() - 1; i >= 0; i--) {
            taken.add(batch.get(i).takenBack(owner));
        }
        guarded(true);
        return taken;
    }

    /** Those that no new finding names. */
    private List<ChangedByte> notNamed(List<ChangedByte> changes, Set<Finding> found, Set<Finding> before) {
        found.removeAll(before);
        List<ChangedByte> hidden = new ArrayList<>();
        for (ChangedByte change : changes) {
            if (found.stream().anyMatch(f -> names(change, f))) {
                named.merge(change.table(), 1, Integer::sum);
            } else {
                hidden.add(change);
            }
        }
        return hidden;
    }

    /** What stands in the queue only is not sealed yet. */
    private static boolean waits(ChangedByte change) {
        return change.table().equals("seal_queue");
    }

    /**
     * One change can hide others, of neighbours that are gone at once the first is named: so those that were hidden are made again
     * without the others, each time the ones that are hidden still, and by itself what no such round brings out.
     */
    private List<ChangedByte> askedAgain(Connection owner, List<ChangedByte> hidden, Set<Finding> before)
            throws SQLException {
        List<ChangedByte> left = hidden;
        while (left.size() > 1) {
            List<ChangedByte> still = madeAgain(owner, left, before);
            if (still.size() == left.size()) {
                break;
            }
            left = still;
        }
        List<ChangedByte> never = new ArrayList<>();
        for (ChangedByte change : left) {
            never.addAll(madeAgain(owner, List.of(change), before));
        }
        return never;
    }

    /** The hidden ones of the changes, made again and taken back. */
    private List<ChangedByte> madeAgain(Connection owner, List<ChangedByte> changes, Set<Finding> before)
            throws SQLException {
        looks++;
        guarded(false);
        List<ChangedByte> again = new ArrayList<>();
        Set<Finding> found;
        try {
            for (ChangedByte change : changes) {
                again.add(change.again(owner));
            }
            found = look();
        } finally {
            again = takenBack(owner, again);
        }
        return notNamed(again, found, before);
    }

    private Set<Finding> look() {
        assertTrue(verification.begin(SUE));
        verification.work(SUE);
        long run = QuarkusTransaction.requiringNew()
                .call(() -> runs.newest().orElseThrow())
                .id();
        assertEquals("false", one("select stopped::text from verification_run where id = " + run));
        Set<Finding> found = new HashSet<>();
        List<String> whats = all("select what from verification_finding where run = " + run + " order by number");
        List<String> places = all("select place from verification_finding where run = " + run + " order by number");
        List<String> sentences =
                all("select sentence from verification_finding where run = " + run + " order by number");
        for (int i = 0; i < whats.size(); i++) {
            found.add(new Finding(whats.get(i), places.get(i), sentences.get(i)));
        }
        return found;
    }

    /** Whether the finding is of that row. */
    private static boolean names(ChangedByte change, Finding finding) {
        Map<String, String> row = change.before();
        String place = finding.place();
        return switch (change.table()) {
            case "trail_entry" -> {
                String number = new TicketNumber(Integer.parseInt(row.get("ticket"))).toString();
                yield place.equals("ticket/" + number + " " + row.get("entry"))
                        || (place.equals(number) && finding.sentence().contains("ntry " + row.get("entry") + " "));
            }
            case "ticket" -> place.equals(new TicketNumber(Integer.parseInt(row.get("serial"))).toString());
            case "ticket_counter" -> place.startsWith("ticket_counter");
            case "attachment" ->
                place.startsWith("attachment ")
                        && (place.endsWith(row.get("sha256")) || place.endsWith(change.after()));
            case "file_record" ->
                place.equals("file_record " + row.get("hash")) || place.equals("file_record " + change.after());
            case "disclosure" -> {
                Map<String, String> now = new TreeMap<>(row);
                now.put(change.column(), change.after());
                yield place.equals(row.get("about"))
                        || place.equals(now.get("stream") + " " + now.get("place") + " " + now.get("name"));
            }
            case "site_record" -> {
                Map<String, String> now = new TreeMap<>(row);
                now.put(change.column(), change.after());
                String waiting = place.replaceFirst("^seal_queue ", "");
                yield waiting.equals(row.get("stream") + " " + row.get("place"))
                        || place.equals(now.get("stream") + " " + now.get("place"));
            }
            case "stream_head" -> place.equals("stream_head " + row.get("stream"));
            case "seal_queue" ->
                place.startsWith("seal_queue ") || place.equals(row.get("stream") + " " + row.get("place"));
            case "seal_leaf" -> place.equals("leaf " + row.get("index"));
            case "seal_node" -> place.equals("seal_node " + row.get("level") + " " + row.get("n"));
            case "seal_head" -> place.equals("seal_head");
            case "checkpoint" ->
                place.equals("head of " + row.get("size")) || place.equals("head of " + change.after());
            case "cosignature" ->
                place.startsWith("cosignature ")
                        && (place.contains(" " + row.get("size") + " ") || place.endsWith(row.get("key")));
            case "time_stamp" ->
                place.equals("time_stamp " + row.get("size")) || place.equals("time_stamp " + change.after());
            case "coach_trial_result" ->
                place.equals("coach_trial_result " + row.get("trial"))
                        || place.equals("coach_trial_result " + change.after());
            default ->
                place.equals(change.table() + " " + row.getOrDefault("id", row.get("number")))
                        || place.equals(change.table() + " " + change.after());
        };
    }

    private static String one(String sql) {
        List<String> found = all(sql);
        return found.isEmpty() ? "" : found.get(0);
    }

    private static List<String> all(String sql) {
        try (var statement = asking.createStatement();
                var rows = statement.executeQuery(sql)) {
            List<String> found = new ArrayList<>();
            while (rows.next()) {
                found.add(rows.getString(1));
            }
            return found;
        } catch (SQLException e) {
            throw new IllegalStateException(sql, e);
        }
    }
}
