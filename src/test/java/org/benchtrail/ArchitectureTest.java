package org.benchtrail;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaMember;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.PermitAll;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.persistence.Entity;
import jakarta.ws.rs.HttpMethod;
import java.lang.annotation.Annotation;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jspecify.annotations.NullMarked;
import org.junit.jupiter.api.Test;

/** The floors and the habits of the code. */
@BesideOthers
class ArchitectureTest {
    private static final String ROOT = "org.benchtrail";
    private static final String TIME_STAMPS = ROOT + ".seal.timestamp";

    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .withImportOption(location -> location.contains("/org/benchtrail/"))
            .importPackages(ROOT);

    /** What core may stand on beside itself. */
    private static final List<String> UNDER_CORE = List.of(
            "java.",
            "javax.crypto.",
            "org.jspecify.",
            "org.apache.commons.statistics.",
            "org.apache.commons.numbers.",
            "org.apache.commons.rng.");

    /** The first package below the root: {@code core}, {@code platform}, or the name of a feature; empty for the start. */
    private static String part(JavaClass type) {
        String name = type.getPackageName();
        if (!name.startsWith(ROOT + ".")) {
            return "";
        }
        String below = name.substring(ROOT.length() + 1);
        return below.contains(".") ? below.substring(0, below.indexOf('.')) : below;
    }

    private static boolean isOurs(JavaClass type) {
        return type.getPackageName().startsWith(ROOT);
    }

    private static boolean isFeature(String part) {
        return !part.isEmpty() && !part.equals("core") && !part.equals("platform");
    }

    private static Stream<JavaClass> in(Predicate<String> part) {
        return CLASSES.stream().filter(type -> part.test(part(type)));
    }

    private static Set<String> violations(Predicate<String> from, Predicate<JavaClass> forbidden) {
        return in(from).flatMap(type -> type.getDirectDependenciesFromSelf().stream())
                .filter(d -> forbidden.test(d.getTargetClass().getBaseComponentType()))
                .map(Dependency::getDescription)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static void assertNone(Set<String> violations) {
        assertEquals(Set.of(), violations);
    }

    @Test
    void allFloorsAreThere() {
        Set<String> parts = CLASSES.stream().map(ArchitectureTest::part).collect(Collectors.toSet());
        assertTrue(
                parts.containsAll(Set.of("core", "platform", "people", "trail", "ticket", "catalogue", "demo")),
                parts::toString);
    }

    @Test
    void core_standsOnTheJdkAndArithmeticOnly() {
        assertNone(violations(
                "core"::equals,
                type -> !type.isPrimitive()
                        && !part(type).equals("core")
                        && UNDER_CORE.stream().noneMatch(type.getName()::startsWith)));
    }

    /** The compiler looks for null only in packages that say so. */
    @Test
    void everyPackage_saysWhatMayBeNull() {
        Set<String> silent = CLASSES.stream()
                .filter(type -> !type.getPackage().isAnnotatedWith(NullMarked.class))
                .map(JavaClass::getPackageName)
                .collect(Collectors.toCollection(TreeSet::new));
        assertNone(silent);
    }

    /** A package of core uses only those named before it; the folders of the six steps are one with the method. */
    private static final List<String> ORDER_IN_CORE = List.of(
            "",
            "integrity",
            "text",
            "statistics",
            "measure",
            "diagnosis",
            "bench",
            "practice",
            "method",
            "site",
            "advice",
            "learning",
            "training",
            "readin",
            "audit",
            "figures");

    private static int placeInCore(JavaClass type) {
        String below = type.getPackageName().substring((ROOT + ".core").length());
        return ORDER_IN_CORE.indexOf(below.isEmpty() ? "" : below.substring(1).split("\\.", 2)[0]);
    }

    @Test
    void everyPackageOfCore_hasItsPlaceInTheOrder() {
        assertNone(in("core"::equals)
                .filter(type -> placeInCore(type) < 0)
                .map(JavaClass::getPackageName)
                .collect(Collectors.toCollection(TreeSet::new)));
    }

    @Test
    void packagesOfCore_useOnlyThoseBeforeThem() {
        assertNone(in("core"::equals)
                .flatMap(type -> type.getDirectDependenciesFromSelf().stream())
                .filter(d -> part(d.getTargetClass().getBaseComponentType()).equals("core")
                        && placeInCore(d.getTargetClass().getBaseComponentType()) > placeInCore(d.getOriginClass()))
                .map(Dependency::getDescription)
                .collect(Collectors.toCollection(TreeSet::new)));
    }

    @Test
    void platform_knowsNoFeature() {
        assertNone(violations("platform"::equals, type -> isFeature(part(type))));
    }

    @Test
    void nothingBelowTheStart_knowsTheStart() {
        assertNone(violations(
                part -> !part.isEmpty(), type -> isOurs(type) && part(type).isEmpty()));
    }

    @Test
    void features_goInNoCircle() {
        Map<String, Set<String>> uses = new TreeMap<>();
        in(ArchitectureTest::isFeature)
                .forEach(type -> type.getDirectDependenciesFromSelf().stream()
                        .map(d -> part(d.getTargetClass().getBaseComponentType()))
                        .filter(other -> isFeature(other) && !other.equals(part(type)))
                        .forEach(other -> uses.computeIfAbsent(part(type), p -> new TreeSet<>())
                                .add(other)));
        assertFalse(uses.isEmpty());
        uses.keySet().forEach(start -> assertFalse(reached(start, uses).contains(start), () -> start + " in " + uses));
    }

    private static Set<String> reached(String start, Map<String, Set<String>> uses) {
        Set<String> seen = new TreeSet<>();
        Deque<String> open = new ArrayDeque<>(uses.getOrDefault(start, Set.of()));
        while (!open.isEmpty()) {
            String next = open.pop();
            if (seen.add(next)) {
                open.addAll(uses.getOrDefault(next, Set.of()));
            }
        }
        return seen;
    }

    @Test
    void entities_stayInTheirPackage() {
        List<JavaClass> entities = CLASSES.stream()
                .filter(type -> type.isAnnotatedWith(Entity.class))
                .toList();
        assertFalse(entities.isEmpty());
        for (JavaClass entity : entities) {
            assertFalse(entity.getModifiers().contains(JavaModifier.PUBLIC), entity::getName);
            assertFalse(entity.getModifiers().contains(JavaModifier.PROTECTED), entity::getName);
        }
    }

    @Test
    void entities_areInNoSignatureThatOthersSee() {
        Set<String> shown = CLASSES.stream()
                .filter(type ->
                        Stream.of("Page", "Api", "View").anyMatch(topLevel(type).getSimpleName()::endsWith))
                .flatMap(type -> type.getMethods().stream())
                .filter(method -> method.getModifiers().contains(JavaModifier.PUBLIC))
                .filter(method -> Stream.concat(
                                method.getReturnType().getAllInvolvedRawTypes().stream(),
                                method.getParameterTypes().stream().flatMap(t -> t.getAllInvolvedRawTypes().stream()))
                        .anyMatch(type -> type.isAnnotatedWith(Entity.class)))
                .map(JavaMethod::getFullName)
                .collect(Collectors.toSet());
        assertNone(shown);
    }

    private static JavaClass topLevel(JavaClass type) {
        return type.getEnclosingClass().map(ArchitectureTest::topLevel).orElse(type);
    }

    private static List<JavaMethod> endpoints() {
        return CLASSES.stream()
                .flatMap(type -> type.getMethods().stream())
                .filter(method -> method.getAnnotations().stream()
                        .anyMatch(a -> a.getRawType().isAnnotatedWith(HttpMethod.class)))
                .toList();
    }

    private static boolean has(JavaMethod method, Class<? extends Annotation> annotation) {
        return method.isAnnotatedWith(annotation) || method.getOwner().isAnnotatedWith(annotation);
    }

    @Test
    void everyEndpoint_isBlocking_onItselfIfItIsAPage() {
        assertTrue(endpoints().size() > 30);
        for (JavaMethod endpoint : endpoints()) {
            boolean page = endpoint.getOwner().getSimpleName().endsWith("Page");
            assertTrue(
                    page ? endpoint.isAnnotatedWith(Blocking.class) : has(endpoint, Blocking.class),
                    endpoint::getFullName);
        }
    }

    @Test
    void everyEndpoint_saysWhoMayComeIn() {
        for (JavaMethod endpoint : endpoints()) {
            assertTrue(
                    has(endpoint, Authenticated.class)
                            || has(endpoint, PermitAll.class)
                            || has(endpoint, RolesAllowed.class),
                    endpoint::getFullName);
        }
    }

    /** The framework makes filters of the platform, and injects into their fields; beans of the features say what they need. */
    @Test
    void features_injectNoFields() {
        Set<String> injected = in(part -> !part.equals("platform"))
                .flatMap(type -> type.getFields().stream())
                .filter(field -> field.isAnnotatedWith(Inject.class) || field.isAnnotatedWith(ConfigProperty.class))
                .map(JavaMember::getFullName)
                .collect(Collectors.toSet());
        assertNone(injected);
    }

    /** But at the edge to Java's check of certificates, which takes no other kind of time. */
    @Test
    void nobody_usesTheOldDate() {
        assertNone(violations(
                        part -> true,
                        type -> Set.of(
                                        "java.util.Date",
                                        "java.util.Calendar",
                                        "java.text.SimpleDateFormat",
                                        "java.sql.Timestamp")
                                .contains(type.getName()))
                .stream()
                .filter(use -> !use.contains("<" + TIME_STAMPS + "."))
                .collect(Collectors.toSet()));
    }

    /** What is true of a simulated device comes from physics, never from what the catalogue believes. */
    @Test
    void practice_knowsNothingOfTheCatalogue() {
        assertNone(in("core"::equals)
                .filter(type -> type.getPackageName().startsWith(ROOT + ".core.practice"))
                .flatMap(type -> type.getDirectDependenciesFromSelf().stream())
                .filter(d -> List.of(".core.diagnosis", ".core.advice").stream()
                        .anyMatch(below -> d.getTargetClass()
                                .getBaseComponentType()
                                .getPackageName()
                                .startsWith(ROOT + below)))
                .map(Dependency::getDescription)
                .collect(Collectors.toCollection(TreeSet::new)));
    }

    /** Another library for time-stamps, or another form of them, is a change in one package. */
    @Test
    void oneRoom_readsAndWritesTimeStamps() {
        Set<String> rooms = CLASSES.stream()
                .filter(type -> type.getDirectDependenciesFromSelf().stream()
                        .anyMatch(d -> d.getTargetClass().getName().startsWith("org.bouncycastle.")))
                .map(JavaClass::getPackageName)
                .collect(Collectors.toSet());
        assertEquals(Set.of(TIME_STAMPS), rooms);
    }

    /** Time and chance come into the core as arguments. */
    @Test
    void core_hasNoClockAndNoDice() {
        List<String> calls = new ArrayList<>();
        in("core"::equals)
                .flatMap(type -> type.getAccessesFromSelf().stream())
                .filter(call -> isClockOrDice(call.getTargetOwner().getName(), call.getName()))
                .forEach(call -> calls.add(call.getDescription()));
        assertEquals(List.of(), calls);
    }

    private static boolean isClockOrDice(String owner, String name) {
        boolean now = owner.startsWith("java.time.") && name.equals("now");
        boolean clock = owner.equals("java.time.Clock");
        boolean system = owner.equals("java.lang.System")
                && Set.of("currentTimeMillis", "nanoTime").contains(name);
        boolean chance = (owner.equals("java.lang.Math") && name.equals("random"))
                || owner.equals("java.util.concurrent.ThreadLocalRandom")
                || owner.equals("java.security.SecureRandom")
                || (owner.equals("java.util.UUID") && name.equals("randomUUID"))
                || owner.equals("java.util.Random");
        return now || clock || system || chance;
    }
}
