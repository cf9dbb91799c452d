package org.benchtrail.audit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import io.restassured.response.Response;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.benchtrail.core.audit.AuditAct.Marked;
import org.benchtrail.core.audit.Mark;
import org.benchtrail.core.method.DefectClass;
import org.benchtrail.knowledge.ClosedTickets;
import org.benchtrail.people.Browser;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.Test;

/**
 * What the first reader said is in no answer that another person gets before the second review is signed: every page that links lead
 * to, every file and every door for programs, in bytes.
 */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class LotSilenceTest extends LotCourse {
    private static final String SECRET = "Marmorkuchen";
    private static final Pattern LINK = Pattern.compile("(?:href|src)=\"(/[^\"#]*)");
    private static final int OF_A_KIND = 1;
    private static final int LARGE_KINDS = 400;

    /** As page and program would write the mark. */
    private static final List<String> MARK_WORDS =
            List.of(SECRET, "Not satisfied, critical", "NOT_SATISFIED", "not-satisfied");

    private String ticket = "";
    private String token = "";

    /** Doors that no link leads to. */
    private List<String> doors() {
        String month = clock.instant().toString().substring(0, "2026-11".length());
        return List.of(
                "/today",
                "/audit",
                "/audit/plan",
                "/audit/" + lot,
                "/audit/" + lot + "/report",
                "/audit/" + lot + "/report.pdf",
                "/audit/" + lot + "/list.csv",
                "/audit/" + lot + "/reviews/" + ticket + "/2",
                "/audit/" + lot + "/reviews/" + ticket + "/1",
                "/audit-coaching",
                "/my-reviews",
                "/figures",
                "/figures/requirements.csv",
                "/figures/mending.csv",
                "/figures/readers.csv",
                "/figures/" + month + ".pdf",
                "/figures/steps.csv",
                "/exports",
                "/exports/" + month + ".xes",
                "/exports/" + month + ".csv",
                "/exports/" + month + ".jsonl",
                "/tickets/" + ticket,
                "/tickets/" + ticket + "/record",
                "/tickets/" + ticket + "/record.pdf",
                "/tickets/" + ticket + "/trail",
                "/tickets/" + ticket + "/trail.jsonl",
                "/seal",
                "/seal/heads",
                "/log/checkpoint",
                "/api/tickets",
                "/api/tickets/" + ticket,
                "/api/tickets/" + ticket + "/trail",
                "/api/tickets/" + ticket + "/trail/verification",
                "/api/tickets/" + ticket + "/ranking",
                "/api/changes",
                "/api/changes?after=0",
                "/api/learning/waiting",
                "/api/learning/cases",
                "/api/knowledge?q=oddlamp",
                "/api/proposals",
                "/api/people",
                "/api/me",
                "/api/catalogue",
                "/api/site/policies");
    }

    private static String kind(String path) {
        return path.replaceAll("\\?.*", "").replaceAll("/[^/]*\\d[^/]*", "/_");
    }

    private static String text(String path, Response answer) throws IOException {
        if (!path.endsWith(".pdf") || answer.statusCode() != 200) {
            return new String(answer.asByteArray(), StandardCharsets.UTF_8);
        }
        try (PDDocument pdf = Loader.loadPDF(answer.asByteArray())) {
            return new PDFTextStripper().getText(pdf);
        }
    }

    /** All that person is answered: at the doors above and, if asked, where their links lead to, one of a kind. */
    private Map<String, String> answers(Browser person, boolean links) throws IOException {
        Map<String, String> answers = new LinkedHashMap<>();
        Map<String, Integer> kinds = new HashMap<>();
        Deque<String> open = new ArrayDeque<>(doors());
        while (!open.isEmpty()) {
            String path = open.poll();
            boolean own = path.contains(lot) || path.contains(ticket) || doors().contains(path);
            if (answers.containsKey(path) || (!own && kinds.merge(kind(path), 1, Integer::sum) > OF_A_KIND)) {
                continue;
            }
            Response answer = path.startsWith("/api/")
                    ? RestAssured.given()
                            .header("Authorization", "Bearer " + token)
                            .get(path)
                    : path.matches("/log/.*|.*\\.\\w+(\\?.*)?")
                            ? person.request().get(path)
                            : person.get(path);
            String told = text(path, answer);
            answers.put(path, answer.statusCode() + " " + told);
            if (links && told.startsWith("<!DOCTYPE html>")) {
                Matcher link = LINK.matcher(told);
                Set<String> found = new LinkedHashSet<>();
                while (link.find()) {
                    found.add(link.group(1).replace("&amp;", "&").replaceFirst("[?]$", ""));
                }
                found.stream()
                        .filter(l -> !l.startsWith("/css/") && !l.startsWith("/js/"))
                        .forEach(open::add);
            }
            assertTrue(answers.size() < LARGE_KINDS, () -> "too many: " + kinds);
        }
        return answers;
    }

    private static Set<String> telling(Map<String, String> answers) {
        Set<String> telling = new TreeSet<>();
        answers.forEach((path, told) -> MARK_WORDS.stream()
                .filter(word -> told.contains(word) && !isOwnForm(path, told, word))
                .forEach(word -> telling.add(path + ": " + word)));
        return telling;
    }

    /** The form of one's own review offers the mark by its name. */
    private static boolean isOwnForm(String path, String told, String word) {
        return word.equals("NOT_SATISFIED")
                && path.contains("/reviews/")
                && told.split(word, -1).length == told.split("name=\"mark\" value=\"" + word, -1).length;
    }

    @Test
    void noAnswer_holdsTheFirstReadersMarks_whileTheSecondReviewIsOpen() throws IOException {
        Instant from = begins();
        ticket = ClosedTickets.one(tickets, TINA).toString();
        token = people.createToken(SUE, "silence", 1).secret();
        stated(from, 9);
        drawn();
        String first = at(take(boris));
        String figures = sue.request().get("/figures/requirements.csv").asString();
        String list = sue.request().get("/audit/" + lot + "/list.csv").asString();
        acts.mark(
                lot,
                new Marked(ticket, 1, "hazards-screened", Mark.NOT_SATISFIED, DefectClass.CRITICAL, List.of(), SECRET),
                BORIS);
        silent("while the first marks it", false);
        markAll(BORIS, first, "");
        at(boris.post(first + "/signature", Map.of()));
        String second = at(take(sue));
        assertTrue(second.endsWith(ticket + "/2"), second);
        silent("while the second reads", true);
        assertEquals(Set.of(), telling(answers(tina, false)), "to who did the work");
        markAll(SUE, second, "");
        assertEquals(figures, sue.request().get("/figures/requirements.csv").asString());
        assertEquals(list, sue.request().get("/audit/" + lot + "/list.csv").asString());

        // who looks finds it where it may be told
        at(sue.post(second + "/signature", Map.of()));
        List<String> told = new ArrayList<>(telling(answers(sue, false)));
        for (String path : List.of("", "/report", "/report.pdf")) {
            assertTrue(told.contains("/audit/" + lot + path + ": " + SECRET), path + " of " + told);
        }
    }

    private void silent(String when, boolean links) throws IOException {
        Map<String, String> answers = answers(sue, links);
        assertEquals(Set.of(), telling(answers), when);
        long well = doors().stream()
                .filter(door -> answers.get(door).startsWith("200 "))
                .count();
        assertTrue(
                well > 30,
                () -> well + " of " + doors().size() + " doors: "
                        + doors().stream()
                                .filter(d -> !answers.get(d).startsWith("200 "))
                                .map(d -> d + " " + answers.get(d).substring(0, 3))
                                .toList());
        assertFalse(answers.get("/audit/" + lot + "/reviews/" + ticket + "/1").startsWith("200 "));
        System.out.println(answers.size() + " answers looked at " + when);
    }
}
