package org.benchtrail.seal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.seal.VerificationRows.Finding;
import org.junit.jupiter.api.Test;

/** What guards the record, changed by whoever owns the database while every trigger keeps its name: the look names each change. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class GuardsTest {
    private static final Path LIST = Path.of("src/main/resources/org/benchtrail/seal/" + Guards.LIST);
    private static final Actor SUE = new Actor("guard-sue", "Sue", Set.of(Role.SUPERVISOR));

    @Inject
    PeopleActs people;

    @Inject
    SealJob job;

    @Inject
    SiteVerification verification;

    @Inject
    VerificationRows runs;

    @Inject
    Guards guards;

    /** What is done, what takes it back, and the place that the look has to name. */
    private record Attack(String change, String back, String place) {}

    private static List<Attack> attacks() {
        String server = one("select current_setting('is_superuser') || ''", true);
        assertEquals("off", server, "the server's account is an ordinary one");
        String account = one("select current_user::text", true);
        List<Attack> all = new ArrayList<>();
        all.add(new Attack(
                "create or replace function seal_entry() returns trigger language plpgsql as $$ begin return null; end $$",
                definition("seal_entry()"),
                "function public.seal_entry()"));
        all.add(new Attack(
                "alter function refuse_change() security definer",
                "alter function refuse_change() security invoker",
                "function public.refuse_change()"));
        all.add(new Attack(
                "create or replace trigger trail_entry_stays before update or delete on trail_entry for each row execute"
                        + " function suppress_redundant_updates_trigger()",
                trigger("trail_entry_stays"),
                "trigger public.trail_entry trail_entry_stays"));
        String limit = trigger("account_is_sealed");
        all.add(new Attack(
                "drop trigger account_is_sealed on account; create constraint trigger account_is_sealed after update on"
                        + " account deferrable initially deferred for each row when (old.id is distinct from new.id)"
                        + limit.substring(limit.indexOf(" EXECUTE FUNCTION")),
                "drop trigger account_is_sealed on account; " + limit,
                "trigger public.account account_is_sealed"));
        all.add(new Attack(
                "alter table site_version disable trigger site_version_stays",
                "alter table site_version enable trigger site_version_stays",
                "trigger public.site_version site_version_stays"));
        all.add(new Attack(
                "alter table checkpoint enable replica trigger checkpoint_stays",
                "alter table checkpoint enable trigger checkpoint_stays",
                "trigger public.checkpoint checkpoint_stays"));
        all.add(new Attack(
                "create trigger zz_other before insert on trail_entry for each row execute function refuse_change()",
                "drop trigger zz_other on trail_entry",
                "trigger public.trail_entry zz_other"));
        all.add(new Attack(
                "grant update on trail_entry to " + account,
                "revoke update on trail_entry from " + account,
                "table public.trail_entry"));
        all.add(new Attack(
                "grant update (hash) on site_record to " + account,
                "revoke update (hash) on site_record from " + account,
                "column public.site_record hash"));
        all.add(new Attack(
                "grant delete on seal_leaf to public",
                "revoke delete on seal_leaf from public",
                "table public.seal_leaf"));
        all.add(new Attack(
                "alter table forecast.content no force row level security; alter table forecast.content disable row level"
                        + " security",
                "alter table forecast.content enable row level security; " + forced("forecast.content"),
                "table forecast.content"));
        all.add(new Attack(
                "alter policy own on recall.answer to public",
                "alter policy own on recall.answer to " + account + "_private",
                "policy recall.answer own"));
        all.add(new Attack(
                "create policy again on practice_truth to " + account + " using (true)",
                "drop policy again on practice_truth",
                "policy public.practice_truth again"));
        all.add(new Attack(
                "grant insert on requester to " + account + "_practice",
                "revoke insert on requester from " + account + "_practice",
                "table public.requester"));
        all.add(new Attack(
                "create rule quiet as on delete to seal_stuck do instead nothing",
                "drop rule quiet on seal_stuck",
                "rule public.seal_stuck quiet"));
        all.add(new Attack(
                "create function canonical_json(value json) returns text language sql as 'select null::text'",
                "drop function canonical_json(json)",
                "function public.canonical_json(json)"));
        all.add(new Attack("create schema shadow", "drop schema shadow", "schema shadow"));
        return all;
    }

    /** A migration that makes or changes a guard changes the list: {@code -Dguards.write=true} writes it anew. */
    @Test
    void theList_isWhatTheMigrationsMake() throws IOException {
        Map<String, String> standing = QuarkusTransaction.requiringNew().call(guards::standing);
        String now = standing.entrySet().stream()
                .map(one -> one.getKey() + "\t" + one.getValue() + "\n")
                .collect(Collectors.joining());
        assertFalse(now.contains("\t\t"), "a line is a name and what it is");
        if (Boolean.getBoolean("guards.write")) {
            Files.writeString(LIST, now);
        }
        assertEquals(Files.readString(LIST), now, "renewed by -Dguards.write=true; read the difference first");
    }

    @Test
    void aGuardThatIsNotWhatTheMigrationsMade_isNamed() {
        people.ensureAccount(SUE.account(), SUE.name(), SUE.roles(), "a long enough password");
        job.round();
        assertEquals(List.of(), look(), "as the migrations made them");
        List<Attack> done = new ArrayList<>();
        List<Finding> found;
        List<Attack> all = attacks();
        try {
            for (Attack one : all) {
                TestDatabase.run(one.change());
                done.add(one);
            }
            found = look();
        } finally {
            done.forEach(one -> TestDatabase.run(one.back()));
        }
        List<String> unnamed = all.stream()
                .map(Attack::place)
                .filter(place -> found.stream().noneMatch(f -> f.place().equals(place)))
                .toList();
        assertEquals(List.of(), unnamed, () -> "of " + all.size() + " not named; found " + found);
        assertEquals(all.size(), found.size(), () -> "and nothing else: " + found);
        assertEquals(List.of(), look(), "all was put back");
    }

    private static void migrated(String version) {
        TestDatabase.run(
                "insert into flyway_schema_history (installed_rank, version, description, type, script, checksum,"
                        + " installed_by, execution_time, success) select max(installed_rank) + 1, ?, 'later', 'SQL', 'later.sql',"
                        + " 1, 'later', 1, true from flyway_schema_history",
                version);
    }

    /** What other migrations made is no tampering; what nobody migrated is, whichever server has run. */
    @Test
    void guardsOfAnotherRelease_areNotCalledTampering_andNothingIsHiddenByIt() {
        people.ensureAccount(SUE.account(), SUE.name(), SUE.roles(), "a long enough password");
        job.round();
        String newest = one("select max(cast(version as numeric))::text from flyway_schema_history", false);
        Attack guard = attacks().get(6);
        TestDatabase.run(guard.change());
        TestDatabase.run(
                "insert into server_node (id, host, release, started, seen) values (gen_random_uuid(), 'h', '99.0', now(), now())");
        try {
            assertEquals(
                    List.of(guard.place()),
                    look().stream().map(Finding::place).toList(),
                    "a later server alone makes no guard");
            migrated("99991231000000");
            told("A later release has migrated this database: let a server of that release look.", guard);
            TestDatabase.run("delete from flyway_schema_history where version = '99991231000000'");
            TestDatabase.run("update flyway_schema_history set success = false where version = ?", newest);
            told("This database has not been migrated to this release: migrate it, and look again.", guard);
            TestDatabase.run("update flyway_schema_history set success = true where version = ?", newest);
            TestDatabase.run(guard.back());
            migrated("99991231000000");
            assertEquals(List.of(), look(), "a later release that left the guards alone");
        } finally {
            TestDatabase.run("delete from flyway_schema_history where version = '99991231000000'");
            TestDatabase.run("update flyway_schema_history set success = true where version = ?", newest);
            TestDatabase.run("drop trigger if exists zz_other on trail_entry");
            TestDatabase.run("delete from server_node where release = '99.0'");
        }
        assertEquals(List.of(), look(), "all was put back");
    }

    /** In one finding, which names the guard all the same. */
    private void told(String why, Attack guard) {
        List<Finding> found = look();
        assertEquals(1, found.size(), found::toString);
        assertEquals("schema", found.get(0).place());
        assertEquals(
                "Of 1 guard this release cannot tell whether it is as the migrations made it (" + guard.place() + "). "
                        + why,
                found.get(0).sentence());
    }

    private List<Finding> look() {
        assertTrue(verification.begin(SUE));
        verification.work(SUE);
        return QuarkusTransaction.requiringNew()
                .call(() -> runs.findings(runs.newest().orElseThrow().id()))
                .stream()
                .filter(f -> f.what().equals("guard"))
                .toList();
    }

    private static String definition(String function) {
        return one("select pg_get_functiondef('" + function + "'::regprocedure)", false);
    }

    private static String trigger(String name) {
        return one(
                "select replace(pg_get_triggerdef(oid), 'CREATE TRIGGER', 'CREATE OR REPLACE TRIGGER') from pg_trigger"
                        + " where tgname = '" + name + "'",
                false);
    }

    private static String forced(String table) {
        boolean forced = one(
                        "select relforcerowsecurity::text from pg_class where oid = '" + table + "'::regclass", false)
                .equals("true");
        return "alter table " + table + (forced ? " force" : " no force") + " row level security";
    }

    private static String one(String sql, boolean asServer) {
        try (var connection = asServer ? TestDatabase.server() : TestDatabase.owner();
                var statement = connection.createStatement();
                var rows = statement.executeQuery(sql)) {
            return rows.next() ? rows.getString(1) : "";
        } catch (SQLException e) {
            throw new IllegalStateException(sql, e);
        }
    }
}
