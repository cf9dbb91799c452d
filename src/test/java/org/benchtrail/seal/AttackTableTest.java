package org.benchtrail.seal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.integrity.Keys;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.integrity.SigningKey;
import org.benchtrail.core.integrity.VerifierKey;
import org.benchtrail.core.integrity.WitnessPolicy;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.PolicyFingerprint;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.MovedClock;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.seal.VerificationRows.Finding;
import org.benchtrail.site.PolicyConfig;
import org.benchtrail.ticket.Act;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.TicketActs;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;

/** What somebody who owns the database does, and the sentence in which the look at the whole site says it; and what the page says nobody sees. */
@Order(2) // a look reads the whole log, and it is short yet
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class AttackTableTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor SUE = new Actor("table-sue", "Sue", Set.of(Role.SUPERVISOR));

    private static final Actor TIM = new Actor("table-tim", "Tim", Set.of(Role.TECHNICIAN));

    @Inject
    PeopleActs people;

    @Inject
    TicketActs tickets;

    @Inject
    SealJob job;

    @Inject
    MovedClock clock;

    @Inject
    SettingsRecord settings;

    @Inject
    QuorumLook quorum;

    @Inject
    PolicyConfig config;

    @Inject
    SiteVerification verification;

    @Inject
    VerificationRows runs;

    @BeforeEach
    void person() {
        people.ensureAccount(SUE.account(), SUE.name(), SUE.roles(), PASSWORD);
        people.ensureAccount(TIM.account(), TIM.name(), TIM.roles(), PASSWORD);
        people.createToken(SUE, "a token", 1);
        job.round();
        assertEquals("", job.stopped());
    }

    /** With two entries. */
    private int ticket(String requester) {
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
        TicketNumber number = tickets.open(report, SUE).number();
        tickets.perform(number, 1, List.<Act>of(s -> new FindingRecorded("It is dusty", false)), SUE);
        return number.serial();
    }

    /**
     * One alteration.
     *
     * @param change statements, each of one table whose guards are out of the way, before a bar
     * @param sentence that the look says of the place
     */
    private record Row(List<String> change, List<String> back, String what, String place, String sentence) {}

    private static void as(List<String> statements) {
        for (String statement : statements) {
            String[] parts = statement.split("\\|", 2);
            TestDatabase.run("alter table " + parts[0] + " disable trigger user");
            TestDatabase.run(parts[1]);
            TestDatabase.run("alter table " + parts[0] + " enable trigger user");
        }
    }

    private static String kept(String table, String where) {
        String columns =
                TestDatabase.one("select string_agg(quote_ident(attname), ', ') from pg_attribute where attrelid = '"
                        + table + "'::regclass and attnum > 0 and not attisdropped and attgenerated = ''");
        return table + "|insert into " + table + " (" + columns + ") overriding system value select " + columns
                + " from jsonb_populate_record(null::" + table + ", $x$"
                + TestDatabase.one("select to_jsonb(t)::text from " + table + " t where " + where) + "$x$)";
    }

    private static String canonical(int ticket, int entry) {
        return "trail_entry|update trail_entry set canonical = decode('"
                + TestDatabase.one("select encode(canonical, 'hex') from trail_entry where ticket = " + ticket
                        + " and entry = " + entry)
                + "', 'hex'), hash = '"
                + TestDatabase.one("select hash from trail_entry where ticket = " + ticket + " and entry = " + entry)
                + "' where ticket = "
                + ticket + " and entry = " + entry;
    }

    private static String row(int ticket) {
        return "ticket|update ticket set entries = "
                + TestDatabase.one("select entries from ticket where serial = " + ticket)
                + ", last_hash = '" + TestDatabase.one("select last_hash from ticket where serial = " + ticket)
                + "' where serial = "
                + ticket;
    }

    private static String account(Actor of) {
        return TestDatabase.one("select id::text from account where login = '" + of.account() + "'");
    }

    private static String number(int ticket) {
        return new TicketNumber(ticket).toString();
    }

    private List<Row> sealed() {
        int bytes = ticket("Rae");
        int anew = ticket("Rae");
        int cut = ticket("Rae");
        int value = ticket("Rae Alone");
        TestDatabase.run("insert into attachment (sha256, content) values (encode(sha256('table'), 'hex'), 'table')"
                + " on conflict do nothing");
        TestDatabase.run("insert into site_limit (id, quantity, unit, upper, source, note, added, added_by) values"
                + " ('table-limit', 'voltage', 'V', 12.5, 'own', 'a note', now(), 'table-sue') on conflict do nothing");
        job.round();
        List<Row> all = new ArrayList<>();
        all.add(new Row(
                List.of("trail_entry|update trail_entry set canonical = set_byte(canonical, 20, 88) where ticket = "
                        + bytes + " and entry = 1"),
                List.of(canonical(bytes, 1)),
                "record",
                "ticket/" + number(bytes) + " 1",
                "What is stored is not what was sealed."));
        String rewritten =
                "trail_entry|update trail_entry set canonical = c.now, hash = encode(sha256('\\x00'::bytea || c.now),"
                        + " 'hex') from (select convert_to(replace(convert_from(canonical, 'UTF8'), '\"driveFailure\":false', '\"driveFailure\":true'), 'UTF8') as now"
                        + " from trail_entry where ticket = " + anew + " and entry = 2) c where ticket = " + anew
                        + " and entry = 2";
        all.add(new Row(
                List.of(
                        rewritten,
                        "ticket|update ticket set last_hash = (select hash from trail_entry where ticket = " + anew
                                + " and entry = 2) where serial = " + anew),
                List.of(canonical(anew, 2), row(anew)),
                "record",
                "ticket/" + number(anew) + " 2",
                "What is stored is not what was sealed."));
        all.add(new Row(
                List.of(
                        "trail_entry|delete from trail_entry where ticket = " + cut + " and entry = 2",
                        "ticket|update ticket set entries = 1, last_hash = (select hash from trail_entry where ticket = "
                                + cut + ") where serial = " + cut),
                List.of(kept("trail_entry", "ticket = " + cut + " and entry = 2"), row(cut)),
                "not sealed",
                "ticket/" + number(cut),
                "It has 1 entries, and 2 are sealed or wait for it."));
        String requester = TestDatabase.one("select requester::text from ticket where serial = " + value);
        all.add(named("requester", "name", "'Somebody else'", "id", requester));
        all.add(named(
                "api_token", "revoked_at", "now()", "id", TestDatabase.one("select max(id)::text from api_token")));
        all.add(named("account", "roles", "array['ADMINISTRATOR']", "id", account(SUE)));
        all.add(named("account", "password_hash", "'x'", "id", account(TIM)));
        TestDatabase.run(
                "insert into known_cause (title, category, shows, apart, cure, state, proposed, proposed_by, version, changed)"
                        + " values ('Of the attack table', 'HEAT', 'shows', 'apart', 'cure', 'RETIRED', now(), 'table-sue', 1, now())");
        all.add(named(
                "known_cause",
                "cure",
                "'Another'",
                "id",
                TestDatabase.one("select max(id)::text from known_cause where title = 'Of the attack table'")));
        TestDatabase.run("insert into shop_case (ticket, closed_at, state, reason) values (" + value
                + ", now(), 'LEFT_OUT', 'of the attack table')");
        all.add(named(
                "shop_case",
                "cause_words",
                "'Another'",
                "id",
                TestDatabase.one("select max(id)::text from shop_case where ticket = " + value)));
        job.round();
        all.add(named("site_limit", "upper", "99", "id", "table-limit"));
        all.add(named("catalogue_version", "practice", "practice || ' '", "number", "1"));
        String sha = TestDatabase.one("select encode(sha256('table'), 'hex')");
        all.add(new Row(
                List.of("attachment|update attachment set content = 'other' where sha256 = '" + sha + "'"),
                List.of("attachment|update attachment set content = 'table' where sha256 = '" + sha + "'"),
                "file",
                "attachment " + sha,
                "The file is not the one that was sealed, or one of the two is gone."));
        all.addAll(removed());
        all.addAll(words());
        all.add(keyOfTheirOwn());
        String size =
                TestDatabase.one("select max(size) from checkpoint where size < (select max(size) from checkpoint)");
        all.add(new Row(
                List.of("checkpoint|update checkpoint set size = 0 where size = " + size),
                List.of("checkpoint|update checkpoint set size = " + size + " where size = 0"),
                "signature",
                "head of 0",
                "What stands in its row is not what this log signed at that size."));
        return all;
    }

    /** It signs for itself, as whoever made it can. */
    private static Row keyOfTheirOwn() {
        SigningKey own = new SigningKey(
                TestDatabase.one(
                        "select convert_from(canonical, 'UTF8')::jsonb -> 'content' ->> 'origin' from site_record"
                                + " where stream = 'keys' and place = 1"),
                VerifierKey.LOG,
                Keys.TEST_3);
        String key = own.verifier().toString();
        String canonical = "{\"content\":{\"act\":\"added\",\"key\":\"" + key + "\",\"signature\":\""
                + own.sign(key + "\n") + "\"}}";
        String place = TestDatabase.one("select max(place) + 1 from site_record where stream = 'keys'");
        return new Row(
                List.of("site_record|insert into site_record (stream, place, canonical, hash) select 'keys', " + place
                        + ", c, encode(sha256('\\x00'::bytea || c), 'hex') from convert_to('" + canonical
                        + "', 'UTF8') c"),
                List.of("site_record|delete from site_record where stream = 'keys' and place = " + place),
                "key",
                "keys " + place,
                "It names a key for which no earlier key of this log signed: what that key signs is not of this log.");
    }

    /** A ticket and a file of which nothing is left but their leaves. */
    private List<Row> removed() {
        ticket("Rae");
        int gone = ticket("Rae");
        ticket("Rae");
        TestDatabase.run("insert into attachment (sha256, content) values (encode(sha256('gone'), 'hex'), 'gone')"
                + " on conflict do nothing");
        job.round();
        List<String> change = List.of(
                "trail_entry|delete from trail_entry where ticket = " + gone,
                "ticket_wait|delete from ticket_wait where ticket = " + gone,
                "ticket|delete from ticket where serial = " + gone);
        List<String> back = List.of(
                kept("ticket", "serial = " + gone),
                kept("trail_entry", "ticket = " + gone + " and entry = 1"),
                kept("trail_entry", "ticket = " + gone + " and entry = 2"));
        String sha = TestDatabase.one("select encode(sha256('gone'), 'hex')");
        String record = TestDatabase.one("select encode(sha256('\\x00'::bytea || file_canonical('gone')), 'hex')");
        return List.of(
                new Row(
                        change,
                        back,
                        "record",
                        "ticket/" + number(gone) + " 2",
                        "What was sealed is gone, or another hash stands beside it."),
                new Row(List.of(), List.of(), "number", number(gone), "There is no ticket of this number."),
                new Row(
                        List.of("attachment|delete from attachment where sha256 = '" + sha + "'"),
                        List.of(kept("attachment", "sha256 = '" + sha + "'")),
                        "file",
                        "file_record " + record,
                        "The file is not the one that was sealed, or one of the two is gone."));
    }

    private static Row named(String table, String column, String value, String key, String of) {
        String where = " where " + key + "::text = '" + of + "'";
        String type = TestDatabase.one("select format_type(atttypid, atttypmod) from pg_attribute where attrelid = '"
                + table + "'::regclass and attname = '" + column + "'");
        String before = TestDatabase.one("select " + column + "::text from " + table + where);
        return new Row(
                List.of(table + "|update " + table + " set " + column + " = " + value + where),
                List.of(table + "|update " + table + " set " + column + " = "
                        + (before == null ? "null" : "$x$" + before + "$x$::" + type) + where),
                "row",
                table + " " + of,
                "This row is not what its record says, or the salt of what is kept apart was changed: " + column + ".");
    }

    /** Of the log itself. */
    private List<Row> ofTheLog() {
        job.round();
        people.createToken(SUE, "one more, so that there is one more head", 1);
        job.round();
        String head = TestDatabase.one("select max(size)::text from checkpoint");
        String note = TestDatabase.one("select note from checkpoint where size = " + head);
        String leaf = TestDatabase.one("select min(index)::text from seal_leaf where stream = 'requesters'");
        String place = TestDatabase.one("select place::text from seal_leaf where index = " + leaf);
        String hash = TestDatabase.one("select encode(hash, 'hex') from seal_leaf where index = " + leaf);
        String other = TestDatabase.one("select min(index)::text from seal_leaf where stream = 'accounts'");
        String leafHash = TestDatabase.one("select encode(leaf_hash, 'hex') from seal_leaf where index = " + other);
        return List.of(
                new Row(
                        List.of("checkpoint|update checkpoint set note = replace(note, E'\\n" + head + "\\n', E'\\n"
                                + head + "0\\n') where size = " + head),
                        List.of("checkpoint|update checkpoint set note = $x$" + note + "$x$ where size = " + head),
                        "signature",
                        "head of " + head,
                        "It is not signed by a key of this log."),
                new Row(
                        List.of("seal_leaf|update seal_leaf set place = place + 1000 where index = " + leaf),
                        List.of("seal_leaf|update seal_leaf set place = " + place + " where index = " + leaf),
                        "stream",
                        "requesters " + (Long.parseLong(place) + 1000),
                        "A place of this stream is missing or there twice."),
                new Row(
                        List.of("seal_leaf|update seal_leaf set leaf_hash = sha256('x') where index = " + other),
                        List.of("seal_leaf|update seal_leaf set leaf_hash = decode('" + leafHash
                                + "', 'hex') where index = " + other),
                        "leaf",
                        "leaf " + other,
                        "Its hash is not that of what stands in its row."),
                new Row(
                        List.of("seal_leaf|update seal_leaf set hash = sha256('x') where index = " + leaf),
                        List.of("seal_leaf|update seal_leaf set hash = decode('" + hash + "', 'hex') where index = "
                                + leaf),
                        "root",
                        "head of " + TestDatabase.one("select min(size)::text from checkpoint where size > " + leaf),
                        "The leaves below it are not those that were signed."));
    }

    /** What somebody wrote into a ticket, which what is hashed only commits to. */
    private List<Row> words() {
        int other = ticket("Rae");
        int none = ticket("Rae");
        int back = ticket("Rae");
        String written = "convert_from(words, 'UTF8')";
        String erase = "insert into erased_words (ticket, entry, commitments, reason, decided_by, at) values (" + back
                + ", 2, '[]', 'asked', 'table-sue', now())";
        return List.of(
                new Row(
                        List.of("trail_entry|update trail_entry set words = convert_to(replace(" + written
                                + ", 'dusty', 'clean'), 'UTF8') where entry = 2 and ticket = " + other),
                        List.of(written(other)),
                        "ticket",
                        number(other),
                        "Entry 2 does not hold: its words were altered."),
                new Row(
                        List.of("trail_entry|update trail_entry set words = null where entry = 2 and ticket = " + none),
                        List.of(written(none)),
                        "ticket",
                        number(none),
                        "Entry 2 does not hold: its words are missing, and nobody erased them."),
                new Row(
                        List.of("ticket|" + erase),
                        List.of("erased_words|delete from erased_words where ticket = " + back),
                        "ticket",
                        number(back),
                        "Entry 2 does not hold: its words were erased, and stand there again."));
    }

    private static String written(int ticket) {
        return "trail_entry|update trail_entry set words = decode('"
                + TestDatabase.one(
                        "select encode(words, 'hex') from trail_entry where entry = 2 and ticket = " + ticket)
                + "', 'hex') where entry = 2 and ticket = " + ticket;
    }

    /** A leaf once more, in the place of the one after it, with the constraint out of the way. */
    private static Row twice() {
        String last = TestDatabase.one("select max(index)::text from seal_leaf");
        String of = TestDatabase.one("select stream || ' ' || place from seal_leaf where index = " + last + " - 1");
        return new Row(
                List.of(
                        "seal_leaf|alter table seal_leaf drop constraint seal_leaf_stream_place_key",
                        "seal_leaf|update seal_leaf l set stream = b.stream, place = b.place, hash = b.hash, leaf_hash = b.leaf_hash"
                                + " from seal_leaf b where b.index = l.index - 1 and l.index = " + last),
                List.of(
                        "seal_leaf|delete from seal_leaf where index = " + last,
                        kept("seal_leaf", "index = " + last),
                        "seal_leaf|alter table seal_leaf add constraint seal_leaf_stream_place_key unique (stream, place)"),
                "stream",
                of,
                "A place of this stream is missing or there twice.");
    }

    /** What waits to be sealed. */
    private List<Row> unsealed() {
        int cut = ticket("Rae");
        int unqueued = ticket("Rae");
        String stream = "ticket/" + number(unqueued);
        return List.of(
                new Row(
                        List.of("trail_entry|delete from trail_entry where ticket = " + cut + " and entry = 2"),
                        List.of(kept("trail_entry", "ticket = " + cut + " and entry = 2")),
                        "ticket",
                        number(cut),
                        "The ticket has 2 entries, but 1 are there."),
                new Row(
                        List.of("seal_queue|delete from seal_queue where place = 2 and stream = '" + stream + "'"),
                        List.of(kept("seal_queue", "place = 2 and stream = '" + stream + "'")),
                        "not sealed",
                        stream,
                        "It has 2 entries, and 1 are sealed or wait for it."));
    }

    @Test
    void everyAlteration_isSaidInItsSentence() {
        List<Row> all = new ArrayList<>(sealed());
        all.addAll(ofTheLog());
        all.add(twice());
        all.addAll(unsealed());
        List<Row> done = new ArrayList<>();
        List<Finding> found;
        TestDatabase.run("alter table site_limit disable trigger site_limit_is_sealed");
        try {
            for (Row one : all) {
                done.add(one);
                as(one.change());
            }
            TestDatabase.run("alter table site_limit disable trigger site_limit_is_sealed");
            found = look();
        } finally {
            for (int i = done.size() - 1; i >= 0; i--) {
                as(done.get(i).back());
            }
            TestDatabase.run("alter table site_limit enable trigger site_limit_is_sealed");
        }
        List<Finding> said = found;
        List<String> unsaid = all.stream()
                .filter(one -> said.stream()
                        .noneMatch(f -> f.what().equals(one.what())
                                && f.place().equals(one.place())
                                && f.sentence().equals(one.sentence())))
                .map(one -> one.what() + ", " + one.place() + ": " + one.sentence() + " But: "
                        + said.stream()
                                .filter(f -> f.place().equals(one.place()))
                                .toList())
                .toList();
        assertEquals(List.of(), unsaid, () -> "in " + said);
        assertTrue(
                said.stream()
                        .anyMatch(f -> f.place().equals("trigger public.site_limit site_limit_is_sealed")
                                && f.sentence().startsWith("It is not what the migrations made. Now: ")),
                said::toString);
        List<Finding> after = look();
        for (Row one : all) {
            assertTrue(
                    after.stream()
                            .noneMatch(f ->
                                    f.what().equals(one.what()) && f.place().equals(one.place())),
                    () -> one.place() + " was put back: " + after);
        }
        job.round();
        assertEquals("", job.stopped());
    }

    private List<Finding> look() {
        assertTrue(verification.begin(SUE));
        verification.work(SUE);
        return QuarkusTransaction.requiringNew()
                .call(() -> runs.findings(runs.newest().orElseThrow().id()));
    }

    /**
     * Somebody puts an entry in with an old time, or sets the server's clock back: a witness had seen the log without it. Without a
     * witness nobody can tell, and the page says so.
     */
    @Test
    void anEntryWithAnOldTime_isEnteredLate_ifAWitnessSawTheLog() {
        TestDatabase.run("alter table cosignature disable trigger user");
        TestDatabase.run("delete from cosignature");
        TestDatabase.run("alter table cosignature enable trigger user");
        people.setZone(SUE, "UTC");
        job.round();
        Instant seen = clock.instant().truncatedTo(ChronoUnit.SECONDS);
        clock.putForward(Duration.ofHours(-1));
        int late = ticket("Rae");
        int honest;
        int early;
        try {
            clock.putRight();
            honest = ticket("Rae");
            clock.putForward(Duration.ofHours(1));
            early = ticket("Rae");
        } finally {
            clock.putRight();
        }
        String before = TestDatabase.one("select max(size)::text from checkpoint");
        job.round();
        Browser sue = Browser.signedIn(SUE.account(), PASSWORD);
        assertEquals(List.of(), times(), "nobody saw it, and nothing is invented");
        assertTrue(
                sue.get("/seal")
                        .asString()
                        .contains(
                                "no witness has signed any head, so whether an entry was made at the time that it bears"
                                        + " cannot be told"),
                "the page says so");
        try {
            witnessed(before, seen);
            witnessed(TestDatabase.one("select max(size)::text from checkpoint"), seen.plusSeconds(1));
            List<Finding> found = times();
            String bears = TestDatabase.one(
                    "select to_char(at at time zone 'UTC', 'YYYY-MM-DD\"T\"HH24:MI') from trail_entry where"
                            + " entry = 1 and ticket = " + late);
            assertTrue(
                    found.stream()
                            .anyMatch(f -> f.place().equals("ticket/" + number(late) + " 1")
                                    && f.sentence().startsWith("Entered late: it bears the time " + bears)
                                    && f.sentence().endsWith(" the log was without it, as a witness saw.")),
                    found::toString);
            assertTrue(
                    found.stream()
                            .anyMatch(f -> f.place().equals("ticket/" + number(early) + " 1")
                                    && f.sentence()
                                            .endsWith(seen.plusSeconds(1)
                                                    + " already: a clock was ahead, or the time is not true.")),
                    found::toString);
            assertTrue(found.stream().noneMatch(f -> f.place().contains(number(honest))), found::toString);
            assertTrue(sue.get("/seal").asString().contains("a look holds the times of entries against its clock"));
        } finally {
            TestDatabase.run("alter table cosignature disable trigger user");
            TestDatabase.run("delete from cosignature");
            TestDatabase.run("alter table cosignature enable trigger user");
        }
    }

    /** Whoever has the host loosens the policy, or takes another witness: the log says what was there before and after, and every entry by what. */
    @Test
    void aPolicyThatIsLoosened_andAnotherWitness_standInTheLog() throws IOException {
        String first = TestDatabase.one(
                "select place || ' ' || convert_from(canonical, 'UTF8') from site_record where stream = 'policy'"
                        + " and convert_from(canonical, 'UTF8') like '%\"what\":\"settings\"%' order by place desc limit 1");
        String fingerprint = PolicyFingerprint.of(config.policy());
        assertTrue(first.contains("\"policy\":\"" + fingerprint + "\""), first);
        assertTrue(first.contains("\"witnesses\":\"\""), first);
        int ticket = ticket("Rae");
        assertEquals(
                fingerprint,
                TestDatabase.one(
                        "select convert_from(canonical, 'UTF8')::json ->> 'policy' from trail_entry where entry = 1 and ticket = "
                                + ticket),
                "what decided the entry stands in the log");
        settings.keep(config.policy(), "quorum none");
        settings.keep(config.policy(), "quorum none");
        settings.keep();
        job.round();
        String place = first.substring(0, first.indexOf(' '));
        assertEquals(
                "quorum none, then ",
                TestDatabase.one(
                        "select string_agg(convert_from(r.canonical, 'UTF8')::json #>> '{content,witnesses}', ', then ' order by r.place)"
                                + " from site_record r join seal_leaf l on l.stream = r.stream and l.place = r.place"
                                + " where r.stream = 'policy' and r.place > " + place));
        assertEquals(
                List.of(),
                look().stream().filter(f -> f.place().startsWith("policy ")).toList());
    }

    /** Witnesses that the site's own policy names have not signed for longer than it should take: the look says so of the head. */
    @Test
    void tooFewWitnesses_areSaidOfTheHead() {
        people.setZone(SUE, "UTC");
        people.createToken(SUE, "for a head that is witnessed", 1);
        job.round();
        String head = TestDatabase.one("select max(size)::text from checkpoint");
        SigningKey witness = new SigningKey("table.example/w", VerifierKey.WITNESS, Keys.TEST_2);
        SigningKey other = new SigningKey("table.example/w", VerifierKey.WITNESS, Keys.TEST_3);
        WitnessPolicy policy = WitnessPolicy.parse("witness w " + witness.verifier() + "\nquorum w\n");
        WitnessPolicy another = WitnessPolicy.parse("witness w " + other.verifier() + "\nquorum w\n");
        try {
            clock.putForward(Duration.ofMinutes(6));
            List<Finding> few = List.of(new Finding(
                    "quorum",
                    "head of " + head,
                    "Too few of the witnesses that the site's policy names signed it, or a later one."));
            assertEquals(few, quorum.look(policy));
            assertEquals(List.of(), quorum.look(WitnessPolicy.parse("quorum none\n")));
            witnessed(head, clock.instant().truncatedTo(ChronoUnit.SECONDS));
            assertEquals(List.of(), quorum.look(policy));
            assertEquals(few, quorum.look(another), "somebody else's signature is none");
        } finally {
            clock.putRight();
            TestDatabase.run("alter table cosignature disable trigger user");
            TestDatabase.run("delete from cosignature where size = " + head);
            TestDatabase.run("alter table cosignature enable trigger user");
        }
    }

    private List<Finding> times() {
        return look().stream().filter(f -> f.what().equals("time")).toList();
    }

    private static void witnessed(String size, Instant at) {
        SigningKey witness = new SigningKey("table.example/w", VerifierKey.WITNESS, Keys.TEST_2);
        String text = SignedNote.parse(TestDatabase.one("select note from checkpoint where size = " + size))
                .text();
        TestDatabase.run(
                "insert into cosignature (size, key, at, line) values (?, ?, to_timestamp(?), ?)",
                Long.parseLong(size),
                witness.verifier().toString(),
                at.getEpochSecond(),
                witness.cosign(text, at.getEpochSecond()).toString());
    }

    /** Of three alterations nobody in the house can know: the page says which they are, and for how long. */
    @Test
    void whatNobodySees_isSaidOnThePage() {
        Browser sue = Browser.signedIn(SUE.account(), PASSWORD);
        job.round();
        people.setZone(SUE, "Europe/Lisbon");
        String page = sue.get("/seal").asString().replaceAll("\\s+", " ");
        assertTrue(
                page.contains(
                        "What is not sealed yet can be changed by whoever owns the database, and nobody sees that."),
                page);
        assertTrue(
                page.contains(
                        "Whoever has both this server and its key could write the log anew and sign it. That is seen only by"
                                + " somebody who kept an earlier head: a witness outside the house, or a person with a head on paper."),
                page);
        assertTrue(page.contains("Whoever has every witness as well is seen by a head on paper alone."), page);
    }

    /** Somebody keeps the sealing from its work: nothing is lost, and the page says for how long something waits. */
    @Test
    void sealingThatIsKeptFromItsWork_isSaid() {
        people.setZone(SUE, "UTC");
        TestDatabase.run("alter table seal_queue disable trigger user");
        TestDatabase.run("update seal_queue set at = at - interval '10 minutes'");
        TestDatabase.run("alter table seal_queue enable trigger user");
        String page = Browser.signedIn(SUE.account(), PASSWORD).get("/seal").asString();
        assertTrue(page.contains("Something has waited to be sealed for 10 min."), page);
        job.round();
        page = Browser.signedIn(SUE.account(), PASSWORD).get("/seal").asString();
        assertTrue(!page.contains("has waited to be sealed for 10 min"), page);
    }
}
