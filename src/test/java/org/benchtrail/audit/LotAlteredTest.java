package org.benchtrail.audit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.audit.AuditLot;
import org.benchtrail.core.audit.AuditPlan;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.seal.SealRounds;
import org.junit.jupiter.api.Test;

/** What the owner of the database alters of a draw is named by 'check this draw'; nobody else has a door to it. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class LotAlteredTest extends LotCourse {
    private static final String HOLDS =
            "The draw holds: plan, list, head, seed and order are what the log sealed, and give one another.";

    /** A part, where it stands, and what is written there instead. */
    private record Altering(String words, String what, String from, String to) {}

    private Instant period;

    private void drawnLot() {
        period = begins();
        ended(TINA);
        ended(TINA);
        ended(TINA);
        stated(period, 2);
        drawn();
        SealRounds.once();
    }

    private List<Altering> alterings() {
        AuditLot lot = now();
        String seed = lot.seed().orElseThrow().seed();
        String frozen = lot.frozen().orElseThrow().items().get(0).hash();
        List<String> order = lot.drawnTickets();
        String head = lot.seed().orElseThrow().head();
        String root = head.lines().toList().get(2);
        return List.of(
                new Altering("plan", "plan-stated", "accept 0", "accept 1"),
                new Altering("list", "lot-frozen", frozen, "ab".repeat(32)),
                new Altering("head", "seed-drawn", root, "B" + root.substring(1, root.length() - 2) + "A="),
                new Altering("seed", "seed-drawn", seed, "ab".repeat(32)),
                new Altering(
                        "drawn order",
                        "sample-drawn",
                        "\"" + order.get(0) + "\", \"" + order.get(1) + "\"",
                        "\"" + order.get(1) + "\", \"" + order.get(0) + "\""));
    }

    private void inRow(Altering a, boolean back) {
        TestDatabase.unguarded(
                "audit_act",
                "update audit_act set body = cast(replace(cast(body as text), ?, ?) as jsonb) where lot = ? and what = ?",
                back ? a.to() : a.from(),
                back ? a.from() : a.to(),
                lot,
                a.what());
    }

    /** With the hash beside it, and with that of the leaf: whoever owns the tables writes all that they like. */
    private void inRecord(Altering a, boolean back) {
        String from = a.from().replace("\", \"", "\",\"");
        String to = a.to().replace("\", \"", "\",\"");
        TestDatabase.unguarded(
                "site_record",
                "with made as (select place, convert_to(replace(convert_from(canonical, 'UTF8'), ?, ?), 'UTF8') as bytes"
                        + " from site_record where stream = 'audit/' || ? and convert_from(canonical, 'UTF8') like '%\"what\":\"' || ? || '\"%')"
                        + " update site_record r set canonical = made.bytes, hash = encode(sha256('\\x00'::bytea || made.bytes), 'hex')"
                        + " from made where r.stream = 'audit/' || ? and r.place = made.place",
                back ? to : from,
                back ? from : to,
                lot,
                a.what(),
                lot);
        TestDatabase.unguarded(
                "seal_leaf",
                "update seal_leaf l set hash = decode(r.hash, 'hex') from site_record r"
                        + " where r.stream = l.stream and r.place = l.place and l.stream = 'audit/' || ?",
                lot);
    }

    private String paper() throws IOException {
        try (PDDocument pdf = Loader.loadPDF(
                sue.request().get("/audit/" + lot + "/report.pdf").asByteArray())) {
            return new PDFTextStripper().getText(pdf).replaceAll("\\s+", " ");
        }
    }

    @Test
    void eachPart_altered_isNamed() throws IOException {
        drawnLot();
        assertTrue(page().contains(HOLDS), page());
        assertTrue(paper().contains(HOLDS), paper());
        for (Altering a : alterings()) {
            inRow(a, false);
            named(a, "The " + a.words() + " was altered: what is kept is not what the log sealed.");
            assertTrue(paper().contains("The " + a.words() + " was altered"), a.words());
            inRecord(a, false);
            named(a, "The " + a.words() + " was altered: neither what is kept nor its record is what the log sealed.");
            inRow(a, true);
            named(a, "The record of the " + a.words() + " was altered: it is not what the log sealed.");
            inRecord(a, true);
            assertTrue(page().contains(HOLDS), a.words() + " was put right");
        }
    }

    private void named(Altering a, String sentence) {
        String page = page();
        assertFalse(page.contains(HOLDS), a.words());
        assertEquals(
                List.of(sentence),
                page.lines()
                        .map(String::strip)
                        .filter(line -> line.startsWith("<li>") && line.contains(" altered: "))
                        .map(line -> line.replaceAll("</?li>", ""))
                        .toList());
    }

    @Test
    void aPlan_thatIsNoneAnyMore_isNamedAsAltered() {
        drawnLot();
        Altering garbled = new Altering("plan", "plan-stated", "audit-plan/1", "audit-plan/9");
        inRow(garbled, false);
        try {
            String sentence = "The plan was altered: what is kept is no plan of an audit.";
            String page = sue.get("/audit/" + lot).asString();
            assertTrue(page.contains(sentence), page);
            String lots = sue.get("/audit").asString();
            assertTrue(lots.contains("State a plan") && lots.contains(sentence), lots);
        } finally {
            inRow(garbled, true);
        }
        assertTrue(page().contains(HOLDS), page());
    }

    private static void refusedBySql(String sql) {
        SQLException refused = assertThrows(SQLException.class, () -> {
            try (Connection server = TestDatabase.server();
                    var statement = server.createStatement()) {
                statement.execute(sql);
            }
        });
        assertTrue(List.of("23505", "42501", "P0001", "55000").contains(refused.getSQLState()), refused::toString);
    }

    @Test
    void noDoor_drawsOrFreezesTwice_orChangesWhatIsFrozen() {
        drawnLot();
        AuditLot before = now();
        AuditPlan plan = before.plan();

        // by the page and by the act that it does
        Map<String, Object> again = new HashMap<>(plan(period, lastUntil, 1));
        again.put("lot", lot);
        refused(422, sue.post("/audit/plan", again));
        assertThrows(Invalid.class, () -> acts.state(plan, SUE));
        Map<String, Object> later =
                new HashMap<>(plan(clock.instant(), clock.instant().plusSeconds(60), 1));
        later.put("lot", lot);
        refused(422, sue.post("/audit/plan", later));
        refused(422, sue.post("/audit/" + lot + "/rest", Map.of()));
        for (String door : List.of("freeze", "draw", "seed", "plan", "list", "sample")) {
            assertTrue(
                    List.of(404, 405)
                            .contains(sue.post("/audit/" + lot + "/" + door, Map.of())
                                    .statusCode()),
                    door);
            assertTrue(
                    List.of(404, 405)
                            .contains(sue.request()
                                    .post("/api/audit/" + lot + "/" + door)
                                    .statusCode()),
                    "API: " + door);
        }
        // by the server's own rounds, even where the image of the lot says that it is to do so
        for (String state : List.of("STATED", "FROZEN", "SEEDED")) {
            TestDatabase.run("update audit_lot set state = ? where id = ?", state, lot);
            job.round();
            assertEquals(before.acts(), now().acts(), state);
        }
        TestDatabase.run("update audit_lot set state = 'DRAWN' where id = ?", lot);

        // by any statement of the server's account
        for (String what : List.of("plan-stated", "lot-frozen", "seed-drawn", "sample-drawn")) {
            refusedBySql(
                    "insert into audit_act (lot, place, at, by, what, body, remark) select lot, 99, at, by, what, body, remark"
                            + " from audit_act where lot = '" + lot + "' and what = '" + what + "'");
            refusedBySql("update audit_act set body = '{}' where lot = '" + lot + "' and what = '" + what + "'");
            refusedBySql("delete from audit_act where lot = '" + lot + "' and what = '" + what + "'");
        }
        refusedBySql("truncate audit_act");
        refusedBySql("update site_record set canonical = '' where stream = 'audit/" + lot + "'");
        refusedBySql("update seal_leaf set place = 99 where stream = 'audit/" + lot + "'");
        refusedBySql("update checkpoint set note = ''");
        refusedBySql("delete from cosignature ");
        refusedBySql("alter table audit_act disable trigger user");
        refusedBySql("drop index audit_act_once");
        assertEquals(before.acts(), now().acts());
        assertTrue(page().contains(HOLDS), page());
    }
}
