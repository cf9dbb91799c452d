package org.benchtrail.people;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.platform.NotFound;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class PeopleActsTest {
    private static final String PASSWORD = "a long enough password";
    private static final Visit HERE = new Visit("192.0.2.7", Optional.empty());

    /** Nobody guesses it, and every beginning of it that is long enough. */
    private static final String HARD = "qv9 Rundkiel-Tresse 41 ahorn plinth wombat 77 Gischt okarina 5 zebu lahn";

    @Inject
    PeopleActs acts;

    @Inject
    SignIn signIn;

    @Inject
    Clock clock;

    @Inject
    Passwords passwords;

    private final Actor boss = new Actor("keeper", "Keeper", Set.of(Role.ADMINISTRATOR));
    private String login;

    @BeforeEach
    void keeper() {
        acts.ensureAccount("keeper", "Keeper", Set.of(Role.ADMINISTRATOR), PASSWORD);
        login = "a" + UUID.randomUUID().toString().substring(0, 8);
    }

    private AccountView make() {
        return acts.createAccount(boss, login, "Ada Example", Set.of(Role.TECHNICIAN, Role.MENTOR), PASSWORD);
    }

    private Actor actor() {
        return new Actor(login, "Ada Example", Set.of(Role.TECHNICIAN));
    }

    private static List<String> fields(Invalid e) {
        return e.problems().stream().map(Invalid.Problem::field).toList();
    }

    private List<String> record(String about) throws SQLException {
        List<String> lines = new ArrayList<>();
        try (Connection owner = TestDatabase.owner();
                var query = owner.prepareStatement(
                        "select who, what, detail from account_record where about = ? order by id")) {
            query.setString(1, about);
            ResultSet found = query.executeQuery();
            while (found.next()) {
                lines.add(found.getString(1) + ": " + found.getString(2) + ": " + found.getString(3));
            }
        }
        return lines;
    }

    @Test
    void create_keepsWhatWasGiven() {
        AccountView made = make();
        assertEquals(login, made.login());
        assertEquals(Set.of(Role.TECHNICIAN, Role.MENTOR), made.roles());
        assertEquals("UTC", made.zone());
        assertTrue(made.active());
        assertEquals(made, acts.account(boss, login));
    }

    @Test
    void create_tellsEverythingWrongAtOnce() {
        Invalid e = assertThrows(Invalid.class, () -> acts.createAccount(boss, "Ä", " ", Set.of(), "short"));
        assertEquals(List.of("login", "name", "roles", "password"), fields(e));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "aaaaaaaaaaaaaaa",
                "123456789012",
                "password1234",
                "qwertyuiopas",
                "benchtrailbenchtrail",
                "administrator1"
            })
    void passwordThatIsTriedFirst_isRefused(String guessed) {
        Invalid e = assertThrows(
                Invalid.class, () -> acts.createAccount(boss, login, "Name", Set.of(Role.TRAINEE), guessed));
        assertEquals(List.of("password"), fields(e));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"", "a", "UPPER", "with blank", "umläut", "a/b", "12345678901234567890123456789012345678901"})
    void create_refusesThisLogin(String bad) {
        Invalid e = assertThrows(
                Invalid.class, () -> acts.createAccount(boss, bad, "Name", Set.of(Role.TRAINEE), PASSWORD));
        assertEquals(List.of("login"), fields(e));
    }

    @ParameterizedTest
    @CsvSource({"11,false", "12,true", "72,true", "73,false"})
    void password_length(int length, boolean taken) {
        Callable<AccountView> act =
                () -> acts.createAccount(boss, login, "Name", Set.of(Role.TRAINEE), (HARD + "x").substring(0, length));
        if (taken) {
            assertEquals(login, assertDoesNotThrowValue(act).login());
        } else {
            assertEquals(List.of("password"), fields(assertThrows(Invalid.class, act::call)));
        }
    }

    private static AccountView assertDoesNotThrowValue(Callable<AccountView> act) {
        return org.junit.jupiter.api.Assertions.assertDoesNotThrow(act::call);
    }

    @Test
    void create_refusesALoginThatIsTaken() {
        make();
        assertEquals(List.of("login"), fields(assertThrows(Invalid.class, this::make)));
    }

    @Test
    void create_atOnceFromTwoSides_makesOneAccount() throws Exception {
        ExecutorService two = Executors.newFixedThreadPool(2);
        try {
            List<Future<AccountView>> both = two.invokeAll(List.<Callable<AccountView>>of(this::make, this::make));
            int refused = 0;
            for (Future<AccountView> one : both) {
                try {
                    one.get();
                } catch (java.util.concurrent.ExecutionException e) {
                    assertTrue(e.getCause() instanceof Invalid, () -> "unexpected: " + e.getCause());
                    refused++;
                }
            }
            assertEquals(1, refused);
        } finally {
            two.shutdownNow();
        }
    }

    @Test
    void ensure_leavesAPresentAccountAlone() {
        make();
        AccountView again = acts.ensureAccount(login, "Other", Set.of(Role.TRAINEE), "quite another password");
        assertEquals("Ada Example", again.name());
        assertTrue(signIn.byPassword(login, PASSWORD, HERE).isPresent());
    }

    @Test
    void lastAdministrator_staysAdministratorAndOpen() {
        TestDatabase.run("create table open_before as select login from account where active and login <> 'keeper'");
        TestDatabase.run("update account set active = false where login <> 'keeper'");
        try {
            Invalid roles = assertThrows(Invalid.class, () -> acts.setRoles(boss, "keeper", Set.of(Role.TECHNICIAN)));
            assertEquals(List.of("roles"), fields(roles));
            Invalid closing = assertThrows(Invalid.class, () -> acts.deactivate(boss, "keeper"));
            assertEquals(List.of("login"), fields(closing));
        } finally {
            TestDatabase.run("update account set active = true where login in (select login from open_before)");
            TestDatabase.run("drop table open_before");
        }
        acts.createAccount(boss, login, "Second", Set.of(Role.ADMINISTRATOR), PASSWORD);
        assertFalse(acts.deactivate(boss, login).active());
    }

    @Test
    void ownAccount_getsNoRole_byAct() {
        acts.createAccount(boss, login, "Second", Set.of(Role.ADMINISTRATOR), PASSWORD);
        Actor self = new Actor(login, "Second", Set.of(Role.ADMINISTRATOR));
        Set<Role> more = Set.of(Role.ADMINISTRATOR, Role.SUPERVISOR);
        Invalid e = assertThrows(Invalid.class, () -> acts.setRoles(self, login, more));
        assertEquals(List.of("roles"), fields(e));
        assertEquals(Set.of(Role.ADMINISTRATOR), acts.account(boss, login).roles());
        assertEquals(more, acts.setRoles(boss, login, more).roles());
        assertEquals(
                Set.of(Role.ADMINISTRATOR),
                acts.setRoles(self, login, Set.of(Role.ADMINISTRATOR)).roles(),
                "giving one up is no harm");
        acts.deactivate(boss, login);
    }

    @Test
    void trainee_isNoMentor_inAnyAccount() throws SQLException {
        Set<Role> both = Set.of(Role.TRAINEE, Role.MENTOR);
        assertEquals(
                List.of("roles"),
                fields(assertThrows(Invalid.class, () -> acts.createAccount(boss, login, "Ada", both, PASSWORD))));
        assertEquals(
                List.of("roles"),
                fields(assertThrows(Invalid.class, () -> acts.ensureAccount(login, "Ada", both, PASSWORD))));
        make();
        assertEquals(List.of("roles"), fields(assertThrows(Invalid.class, () -> acts.setRoles(boss, login, both))));
        try (Connection owner = TestDatabase.owner();
                Statement statement = owner.createStatement()) {
            assertThrows(
                    SQLException.class,
                    () -> statement.execute(
                            "update account set roles = array['TRAINEE','MENTOR'] where login = '" + login + "'"));
        }
    }

    @Test
    void everyAct_leavesALine_andNoSecret() throws SQLException {
        make();
        NewToken token = acts.createToken(actor(), "script", 7);
        acts.revokeToken(actor(), token.token().id());
        acts.setZone(actor(), "Europe/Lisbon");
        acts.changePassword(actor(), PASSWORD, "another long password");
        acts.resetPassword(boss, login, "a third long password");
        acts.setRoles(boss, login, Set.of(Role.SUPERVISOR));
        acts.deactivate(boss, login);
        acts.reactivate(boss, login);
        List<String> lines = record(login);
        long id = token.token().id();
        assertEquals(
                List.of(
                        "keeper: created: roles [TECHNICIAN, MENTOR]",
                        login + ": token made: token " + id + ", script",
                        login + ": token revoked: token " + id + ", script",
                        login + ": zone set: Europe/Lisbon",
                        login + ": password changed: ",
                        "keeper: password reset: ",
                        "keeper: roles set: from [TECHNICIAN, MENTOR] to [SUPERVISOR]",
                        "keeper: deactivated: ",
                        "keeper: reactivated: "),
                lines);
        assertFalse(lines.toString().contains(token.secret().substring(3)));
    }

    @Test
    void lock_leavesALine() throws SQLException {
        make();
        for (int i = 0; i < 5; i++) {
            assertTrue(signIn.byPassword(login, "wrong", HERE).isEmpty());
        }
        assertTrue(record(login).contains("(server): locked: 5 wrong tries, for 5 min"), () -> "no lock on record");
    }

    @Test
    void manyTriesAtOnce_getNoFurtherThanFive() throws Exception {
        make();
        ExecutorService many = Executors.newFixedThreadPool(8);
        try {
            List<Callable<Boolean>> tries = new ArrayList<>();
            for (int i = 0; i < 20; i++) {
                tries.add(() -> signIn.byPassword(login, "wrong", HERE).isPresent());
            }
            for (Future<Boolean> one : many.invokeAll(tries)) {
                assertFalse(one.get());
            }
        } finally {
            many.shutdownNow();
        }
        assertTrue(signIn.byPassword(login, PASSWORD, HERE).isEmpty());
        assertTrue(acts.account(boss, login).locked());
        assertEquals(
                5,
                record(login).stream()
                        .filter(line -> line.contains("sign-in failed"))
                        .count());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"update account_record set who = 'x'", "delete from account_record", "truncate account_record"})
    void record_cannotBeRewritten(String sql) throws SQLException {
        make();
        try (Connection server = TestDatabase.server();
                Statement statement = server.createStatement()) {
            assertEquals(
                    "42501",
                    assertThrows(SQLException.class, () -> statement.execute(sql))
                            .getSQLState());
        }
        try (Connection owner = TestDatabase.owner();
                Statement statement = owner.createStatement()) {
            SQLException refused = assertThrows(SQLException.class, () -> statement.execute(sql));
            assertTrue(refused.getMessage().contains("append-only"), refused.getMessage());
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "delete from account", "update account set login = 'x'", "delete from api_token",
                "update api_token set expires_at = now()", "drop table account", "create table x (y int)"
            })
    void server_hasNoMoreRightsThanItNeeds(String sql) throws SQLException {
        try (Connection server = TestDatabase.server();
                Statement statement = server.createStatement()) {
            assertEquals(
                    "42501",
                    assertThrows(SQLException.class, () -> statement.execute(sql))
                            .getSQLState());
        }
    }

    @Test
    void list_pagesByLogin_andTakesTheSearchLiterally() {
        for (String tail : List.of(".a", ".b", ".c", "_d")) {
            acts.createAccount(boss, login + tail, "Name " + login, Set.of(Role.TRAINEE), PASSWORD);
        }
        AccountsView first = acts.list(boss, login, "", 3);
        assertEquals(List.of(login + ".a", login + ".b", login + ".c"), logins(first));
        assertEquals(login + ".c", first.next());
        AccountsView second = acts.list(boss, login, login + ".c", 3);
        assertEquals(List.of(login + "_d"), logins(second));
        assertNull(second.next());
        assertEquals(List.of(login + "_d"), logins(acts.list(boss, login + "_", "", 3)));
        assertEquals(List.of(), logins(acts.list(boss, "%" + login, "", 3)));
    }

    private static List<String> logins(AccountsView view) {
        return view.accounts().stream().map(AccountView::login).toList();
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "Nowhere/City", "+02:00", "GMT+2", "../etc", "Europe"})
    void zone_mustBeOneOfTheRegions(String zone) {
        make();
        assertEquals(List.of("zone"), fields(assertThrows(Invalid.class, () -> acts.setZone(actor(), zone))));
    }

    @ParameterizedTest
    @CsvSource({"0,false", "1,true", "365,true", "366,false"})
    void token_isGoodForOneDayToAYear(int days, boolean taken) {
        make();
        if (taken) {
            TokenView token = acts.createToken(actor(), "script", days).token();
            assertEquals(Duration.ofDays(days), Duration.between(token.createdAt(), token.expiresAt()));
        } else {
            assertEquals(
                    List.of("days"),
                    fields(assertThrows(Invalid.class, () -> acts.createToken(actor(), "script", days))));
        }
    }

    @Test
    void token_ofSomebodyElse_isNotFound() {
        make();
        long id = acts.createToken(actor(), "script", null).token().id();
        assertThrows(NotFound.class, () -> acts.revokeToken(boss, id));
    }

    @Test
    void secret_isInNoText() {
        make();
        NewToken token = acts.createToken(actor(), "script", null);
        assertFalse(token.toString().contains(token.secret()));
        assertFalse(new PeopleApi.NewAccount("a", "b", Set.of(), PASSWORD)
                .toString()
                .contains(PASSWORD));
        assertFalse(new PeopleApi.NewPassword(PASSWORD).toString().contains(PASSWORD));
    }

    @Test
    void clock_ticksInMicroseconds() {
        assertEquals(0, clock.instant().getNano() % 1000);
    }

    /** What the application ships with; the test file lowers it for speed. */
    @Test
    void costInProduction_isTwelve() throws NoSuchMethodException {
        String shipped = SignInConfig.class
                .getMethod("bcryptCost")
                .getAnnotation(io.smallrye.config.WithDefault.class)
                .value();
        assertEquals("12", shipped);
    }

    /** The second field of a bcrypt hash is its cost; this test run asks for 4. */
    @Test
    void configuredCost_isTheOneUsed() {
        String hash = passwords.hash(PASSWORD);
        assertTrue(hash.matches("\\$2[aby]\\$04\\$.{53}"), hash);
        assertTrue(passwords.matches(PASSWORD, hash));
        assertFalse(passwords.matches(PASSWORD + "x", hash));
    }
}
