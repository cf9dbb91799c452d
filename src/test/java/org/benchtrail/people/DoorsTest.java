package org.benchtrail.people;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import io.quarkus.security.Authenticated;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.PermitAll;
import jakarta.inject.Inject;
import jakarta.ws.rs.HttpMethod;
import jakarta.ws.rs.Path;
import java.lang.annotation.Annotation;
import java.lang.reflect.Method;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.platform.TestDatabase;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Every door of this package, tried by every role and by a stranger, against the one table of rights. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class DoorsTest {
    private static final String PASSWORD = "a long enough password";

    /** What a door asks for: a permission, or only to be signed in (null). */
    record Door(String method, String path, @Nullable Permission permission) {
        boolean isApi() {
            return path.startsWith("/api/");
        }
    }

    private static final List<Door> CLOSED_DOORS = List.of(
            new Door("GET", "/people", Permission.MANAGE_ACCOUNTS),
            new Door("POST", "/people", Permission.MANAGE_ACCOUNTS),
            new Door("GET", "/people/{login}", Permission.MANAGE_ACCOUNTS),
            new Door("POST", "/people/{login}/roles", Permission.MANAGE_ACCOUNTS),
            new Door("POST", "/people/{login}/deactivation", Permission.MANAGE_ACCOUNTS),
            new Door("POST", "/people/{login}/reactivation", Permission.MANAGE_ACCOUNTS),
            new Door("POST", "/people/{login}/password", Permission.MANAGE_ACCOUNTS),
            new Door("GET", "/me", null),
            new Door("POST", "/me/password", null),
            new Door("POST", "/me/zone", null),
            new Door("POST", "/me/tokens", Permission.OWN_TOKENS),
            new Door("POST", "/me/tokens/{id}/revocation", Permission.OWN_TOKENS),
            new Door("GET", "/api/people", Permission.MANAGE_ACCOUNTS),
            new Door("POST", "/api/people", Permission.MANAGE_ACCOUNTS),
            new Door("GET", "/api/people/{login}", Permission.MANAGE_ACCOUNTS),
            new Door("PUT", "/api/people/{login}/roles", Permission.MANAGE_ACCOUNTS),
            new Door("PUT", "/api/people/{login}/active", Permission.MANAGE_ACCOUNTS),
            new Door("PUT", "/api/people/{login}/password", Permission.MANAGE_ACCOUNTS),
            new Door("GET", "/api/me", null),
            new Door("PUT", "/api/me/zone", null),
            new Door("GET", "/api/me/tokens", Permission.OWN_TOKENS),
            new Door("POST", "/api/me/tokens", Permission.OWN_TOKENS),
            new Door("DELETE", "/api/me/tokens/{id}", Permission.OWN_TOKENS));

    private static final Set<String> OPEN_DOORS = Set.of("GET /sign-in", "POST /sign-in", "POST /sign-out");

    @Inject
    PeopleActs acts;

    private final Map<Role, String> tokens = new EnumMap<>(Role.class);
    private final Map<Role, Browser> browsers = new EnumMap<>(Role.class);

    static Stream<Door> doors() {
        return CLOSED_DOORS.stream();
    }

    static Stream<Arguments> doorsAndRoles() {
        return CLOSED_DOORS.stream()
                .flatMap(door -> Arrays.stream(Role.values()).map(role -> Arguments.of(door, role)));
    }

    @BeforeAll
    void people() {
        acts.ensureAccount("door-target", "Door Target", Set.of(Role.TECHNICIAN), PASSWORD);
        for (Role role : Role.values()) {
            acts.ensureAccount(login(role), "Door " + role, Set.of(role), PASSWORD);
        }
        TestDatabase.run("update account set active = true where login like 'door-%'");
    }

    private static String login(Role role) {
        return "door-" + RoleNames.of(role);
    }

    private String token(Role role) {
        return tokens.computeIfAbsent(
                role,
                r -> acts.createToken(new Actor(login(r), "Door", Set.of(r)), "doors", 1)
                        .secret());
    }

    private static String filled(Door door) {
        return door.path().replace("{login}", "door-target").replace("{id}", "999999999");
    }

    private Response open(Door door, Role role) {
        if (door.isApi()) {
            RequestSpecification request = given().header("Authorization", "Bearer " + token(role));
            return sent(
                    door,
                    door.method().equals("GET")
                            ? request
                            : request.contentType("application/json").body("{}"));
        }
        return sent(door, page(door, browsers.computeIfAbsent(role, DoorsTest::signedIn)));
    }

    private static Browser signedIn(Role role) {
        Browser browser = Browser.signedIn(login(role), PASSWORD);
        browser.get("/me");
        return browser;
    }

    private static RequestSpecification page(Door door, Browser browser) {
        RequestSpecification request = browser.request();
        return door.method().equals("GET") ? request : request.formParam("csrf-token", browser.formToken());
    }

    private static Response sent(Door door, RequestSpecification request) {
        return request.request(door.method(), filled(door));
    }

    @ParameterizedTest
    @MethodSource("doorsAndRoles")
    void door_opensToThoseInTheTable(Door door, Role role) {
        int status = open(door, role).statusCode();
        boolean allowed = door.permission() == null
                || Permissions.roles(door.permission()).contains(role);
        if (allowed) {
            assertTrue(Set.of(200, 201, 204, 303, 404, 422).contains(status), () -> door + " answered " + status);
        } else {
            assertEquals(403, status);
        }
    }

    @ParameterizedTest
    @MethodSource("doors")
    void door_isClosedToStrangers(Door door) {
        if (door.isApi()) {
            RequestSpecification body = given().contentType("application/json").body("{}");
            assertEquals(
                    401,
                    sent(door, door.method().equals("GET") ? given() : body).statusCode());
            return;
        }
        Browser stranger = new Browser();
        stranger.get("/sign-in");
        Response answer = sent(door, page(door, stranger));
        assertEquals(door.method().equals("GET") ? 303 : 401, answer.statusCode());
        assertFalse(answer.asString().contains("Door Target"));
    }

    @Test
    void everyEndpointIsInThisTable() {
        Set<String> listed = Stream.concat(
                        CLOSED_DOORS.stream().map(door -> door.method() + " " + door.path()), OPEN_DOORS.stream())
                .collect(Collectors.toCollection(TreeSet::new));
        assertEquals(listed, endpoints().map(DoorsTest::address).collect(Collectors.toCollection(TreeSet::new)));
    }

    @Test
    void everyEndpointIsBlockingAndSaysWhoMayComeIn() {
        endpoints().forEach(endpoint -> {
            Class<?> resource = endpoint.getDeclaringClass();
            assertTrue(endpoint.isAnnotationPresent(Blocking.class), endpoint::toString);
            assertTrue(
                    endpoint.isAnnotationPresent(PermitAll.class) || resource.isAnnotationPresent(Authenticated.class),
                    endpoint::toString);
        });
    }

    private static Stream<Method> endpoints() {
        return new ClassFileImporter()
                .importPackages("org.benchtrail.people").stream()
                        .filter(type -> type.isAnnotatedWith(Path.class))
                        .map(JavaClass::reflect)
                        .flatMap(type -> Arrays.stream(type.getDeclaredMethods()))
                        .filter(method -> !verb(method).isEmpty());
    }

    private static String verb(Method method) {
        return Arrays.stream(method.getAnnotations())
                .map(Annotation::annotationType)
                .filter(type -> type.isAnnotationPresent(HttpMethod.class))
                .map(type -> type.getAnnotation(HttpMethod.class).value())
                .findFirst()
                .orElse("");
    }

    private static String address(Method method) {
        String base = method.getDeclaringClass().getAnnotation(Path.class).value();
        Path own = method.getAnnotation(Path.class);
        String joined = own == null ? base : base + "/" + own.value();
        return verb(method) + " " + joined.replaceAll("/+", "/");
    }
}
