package org.benchtrail.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.URL;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.demo.DemoStart;
import org.benchtrail.demo.Scenarios;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Every page that somebody comes to by links alone, looked at by day and at night, wide, narrow and printed. With all demo tickets
 * and five people it takes minutes, so it is run on request: {@code -Dpages.all=true}, with {@code -Dpictures=true} for pictures.
 */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
@EnabledIfSystemProperty(
        named = "pages.all",
        matches = "true",
        disabledReason = "looking at every page takes minutes: -Dpages.all=true")
class EveryPageTest {
    /** Of pages that differ only in what they are about so many are looked at; of tickets, which differ by step, more. */
    private static final int OF_A_KIND = 1;

    private static final int TICKETS = 6;

    @TestHTTPResource("/")
    URL server;

    @Inject
    DemoStart demo;

    @Inject
    PeopleActs accounts;

    @BeforeEach
    void load() throws IOException {
        DemoPeople.ensure(accounts);
        demo.load();
    }

    @ParameterizedTest
    @ValueSource(strings = {"ines", "tomasz", "ruth", "omar", "lena"})
    void everyPage_isFitForEverybody(String login) {
        List<String> wrong = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        Map<String, Integer> ofAKind = new HashMap<>();
        Deque<String> open = new ArrayDeque<>(List.of("/"));
        try (Person person = new Person(server.toString()).signIn(login, Scenarios.DEMO_PASSWORD)) {
            while (!open.isEmpty()) {
                String path = open.poll();
                String kind = kind(path);
                int most = kind.equals("/tickets/_") ? TICKETS : OF_A_KIND;
                if (!seen.add(path) || ofAKind.merge(kind, 1, Integer::sum) > most) {
                    continue;
                }
                if (!person.goesToAPage(path)) {
                    continue;
                }
                try {
                    person.lookInEveryWay(login + kind.replace('/', '-') + "-" + ofAKind.get(kind));
                } catch (AssertionError e) {
                    wrong.add(path + ": " + e.getMessage());
                }
                open.addAll(person.links());
            }
        }
        System.out.println(
                login + " looked at " + ofAKind.size() + " kinds of pages: " + String.join(" ", ofAKind.keySet()));
        assertTrue(ofAKind.size() > 10, "the links lead on");
        assertEquals(List.of(), wrong);
    }

    /** The address without what it is about. */
    private static String kind(String path) {
        return path.replaceAll("\\?.*", "")
                .replaceAll("/[^/]*\\d[^/]*", "/_")
                .replaceAll("^/(devices|known-causes|people|places|bench)/[^/]+", "/$1/_");
    }
}
