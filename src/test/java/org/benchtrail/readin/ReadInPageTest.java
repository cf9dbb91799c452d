package org.benchtrail.readin;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.benchtrail.core.bench.storage.Sectors;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.identify.AttachmentAdded;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.Scope;
import org.benchtrail.core.method.identify.ScopeRecorded;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.ticket.Act;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.TicketActs;
import org.benchtrail.ticket.TicketQueries;
import org.benchtrail.ticket.attachment.AttachmentQueries;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ReadInPageTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor WORKER = new Actor("read-in-worker", "Rea Example", Set.of(Role.TECHNICIAN));
    private static final String UPS =
            "upsBatteryVoltage.0 = 274\nupsBatteryStatus.0 = batteryLow(3)\nupsInputVoltage.1 = 230";

    @Inject
    PeopleActs people;

    @Inject
    TicketActs acts;

    @Inject
    TicketQueries look;

    @Inject
    AttachmentQueries files;

    private Browser browser;
    private String token = "";

    @BeforeEach
    void signIn() {
        if (browser == null) {
            people.ensureAccount(WORKER.account(), WORKER.name(), WORKER.roles(), PASSWORD);
            browser = Browser.signedIn(WORKER.account(), PASSWORD);
            browser.get("/read-in");
            token = people.createToken(WORKER, "read in", 1).secret();
        }
    }

    private TicketNumber ticket() {
        NewTicket report = new NewTicket(
                "The UPS beeps",
                "",
                Category.POWER,
                "UPS",
                "Cellar",
                "Ann Example",
                "by the door",
                Priority.Impact.ONE_PERSON,
                Priority.Urgency.CAN_WAIT,
                false);
        return acts.open(report, WORKER).number();
    }

    private JobSheet sheet(TicketNumber number) {
        return look.ticket(number, WORKER).sheet();
    }

    private RequestSpecification form(String kind, String text) {
        return browser.request()
                .multiPart("csrf-token", browser.formToken())
                .multiPart("kind", kind)
                .multiPart("text", text, "text/plain; charset=UTF-8");
    }

    private Response preview(String kind, String text) {
        return form(kind, text).post("/read-in");
    }

    private Response record(Response previewed, String kind, String text, TicketNumber number, String... taken) {
        RequestSpecification form = form(kind, text)
                .multiPart("ticket", number.toString())
                .multiPart("seen", hidden(previewed, "seen"))
                .multiPart("version", hidden(previewed, "version"));
        for (String line : taken) {
            form = form.multiPart("take", line);
        }
        return form.post("/read-in/record");
    }

    private static String hidden(Response page, String name) {
        Matcher found =
                Pattern.compile("name=\"" + name + "\" value=\"([^\"]*)\"").matcher(page.asString());
        assertTrue(found.find(), name);
        return found.group(1);
    }

    private Response previewFor(TicketNumber number, String kind, String text) {
        return form(kind, text).multiPart("ticket", number.toString()).post("/read-in");
    }

    @Test
    void form_offersEveryKind_andTakesTheTicketFromItsAddress() {
        String page = browser.get("/read-in?ticket=40718-6&kind=ups-mib").asString();
        assertTrue(page.contains("value=\"40718-6\""));
        assertTrue(page.contains("value=\"ups-mib\" checked"));
        assertTrue(page.contains("value=\"nvme-page\""));
        assertTrue(browser.get("/bench").asString().contains("href=\"/read-in\""));
    }

    @Test
    void preview_showsWhatIsFound_andRecordsNothing() {
        TicketNumber number = ticket();
        int before = sheet(number).entries();
        Response answer = previewFor(number, "ups-mib", UPS);
        assertEquals(200, answer.statusCode());
        String page = answer.asString();
        assertTrue(page.contains("27.4\u202fV"));
        assertTrue(page.contains("voltage, UPS, battery"));
        assertTrue(page.contains("The battery is low"));
        assertTrue(page.contains("no limit given"));
        assertTrue(page.contains("2 readings, 1 finding"));
        assertTrue(page.contains("Record on ticket " + number));
        assertEquals(before, sheet(number).entries());
    }

    @Test
    void record_takesTheTickedLinesOnly_andTheFile() {
        TicketNumber number = ticket();
        Response shown = previewFor(number, "ups-mib", UPS);
        Response answer = record(shown, "ups-mib", UPS.replace("\n", "\r\n"), number, "r1", "f0", "original");
        assertEquals(303, answer.statusCode());
        JobSheet sheet = sheet(number);
        List<ReadingRecorded> readings =
                sheet.all(ReadingRecorded.class).stream().map(n -> n.fact()).toList();
        assertEquals(1, readings.size());
        assertEquals("UPS, input line 1", readings.get(0).point());
        assertEquals(1, sheet.all(FindingRecorded.class).size());
        AttachmentAdded file = sheet.all(AttachmentAdded.class).get(0).fact();
        assertEquals("ups-mib.txt", file.fileName());
        assertEquals(UPS, new String(files.file(number, file.sha256(), WORKER), StandardCharsets.UTF_8));
    }

    @Test
    void record_ofAFailingDrive_putsDataFirst_andKeepsTheBytes() {
        TicketNumber number = ticket();
        byte[] page = Sectors.nvme();
        page[0] = 4;
        Response shown = browser.request()
                .multiPart("csrf-token", browser.formToken())
                .multiPart("kind", "nvme-page")
                .multiPart("text", "")
                .multiPart("ticket", number.toString())
                .multiPart("file", "health.bin", page)
                .post("/read-in");
        assertTrue(shown.asString().contains("A drive is failing: data first."), shown::asString);
        assertEquals(
                303,
                record(shown, "nvme-page", Sectors.hex(page), number, "f0", "original")
                        .statusCode());
        assertTrue(sheet(number).all(FindingRecorded.class).get(0).fact().driveFailure());
        AttachmentAdded file = sheet(number).all(AttachmentAdded.class).get(0).fact();
        assertEquals(512, file.bytes());
        assertArrayEquals(page, files.file(number, file.sha256(), WORKER));
    }

    @Test
    void record_onAStaleTicket_isToldAndRecordsNothing() {
        TicketNumber number = ticket();
        Response shown = previewFor(number, "ups-mib", UPS);
        acts.perform(number, sheet(number).entries(), List.<Act>of(s -> new ScopeRecorded(Scope.ONE, "")), WORKER);
        int before = sheet(number).entries();
        Response answer = record(shown, "ups-mib", UPS, number, "r0", "original");
        assertEquals(409, answer.statusCode());
        assertTrue(answer.asString().contains("Somebody else wrote on the ticket meanwhile"));
        assertTrue(answer.asString().contains("value=\"r0\" id=\"take-r0\" checked"));
        assertFalse(answer.asString().contains("value=\"r1\" id=\"take-r1\" checked"));
        assertEquals(before, sheet(number).entries());
        assertEquals(303, record(answer, "ups-mib", UPS, number, "r0").statusCode());
    }

    @Test
    void record_ofSomethingElseThanWasShown_showsItFirst() {
        TicketNumber number = ticket();
        Response shown = previewFor(number, "ups-mib", UPS);
        Response answer = record(shown, "ups-mib", UPS.replace("274", "110"), number, "r0");
        assertEquals(409, answer.statusCode());
        assertTrue(answer.asString().contains("Look again"));
        assertTrue(answer.asString().contains("11.0\u202fV"));
        assertTrue(sheet(number).all(ReadingRecorded.class).isEmpty());
    }

    @Test
    void record_ofNothing_isRefused() {
        TicketNumber number = ticket();
        Response answer = record(previewFor(number, "ups-mib", UPS), "ups-mib", UPS, number, "original");
        assertEquals(422, answer.statusCode());
        assertTrue(answer.asString().contains("Tick at least one"));
        assertTrue(sheet(number).all(AttachmentAdded.class).isEmpty());
    }

    @Test
    void malformed_keepsTheText_andNamesTheRow() {
        Response answer = preview("ups-mib", "upsBatteryVoltage.0 = 274\nupsBateryStatus.0 = 2");
        assertEquals(422, answer.statusCode());
        assertTrue(answer.asString().contains("<strong>row 2</strong>"));
        assertTrue(answer.asString().contains("The nearest is upsBatteryStatus."));
        assertTrue(answer.asString().contains("upsBateryStatus.0 = 2</textarea>"));
    }

    @Test
    void malformed_ofEveryKind_isRefused() {
        assertRefused(preview("redfish", "{\"Temperatures\": [{\"ReadingCelsius\": NaN}]}"), "NaN and Infinity");
        assertRefused(
                preview("redfish", "{\"Temperatures\": [{\"ReadingCelsius\": \"7\"}]}"),
                "Temperatures[0].ReadingCelsius");
        assertRefused(preview("nvme-page", "00 11"), "cut short");
        assertRefused(preview("ata-page", "zz"), "hexadecimal");
        assertRefused(preview("ata-rows", "5 1"), "five numbers");
        assertRefused(form("series", "0 25\n10 NaN").multiPart("unit", "°C").post("/read-in"), "Row 2");
        assertRefused(preview("series", "0 25\n10 26"), "Give the unit");
        assertRefused(preview("ups-mib", ""), "nothing here");
        assertRefused(preview("no-kind", "x"), "Choose what it is");
        assertRefused(form("ups-mib", UPS).multiPart("ticket", "40718-7").post("/read-in"), "ticket");
        assertRefused(
                form("ups-mib", UPS)
                        .multiPart("ticket", new TicketNumber(99_999_999).toString())
                        .post("/read-in"),
                "There is no ticket");
    }

    private static void assertRefused(Response answer, String words) {
        assertEquals(422, answer.statusCode());
        assertTrue(answer.asString().contains(words), answer::asString);
    }

    @Test
    void tenMegabytes_areRefused() {
        RequestSpecification upload = browser.request()
                .multiPart("csrf-token", browser.formToken())
                .multiPart("kind", "redfish")
                .multiPart("text", "")
                .multiPart("file", "big.json", new byte[10_000_000]);
        assertRefused(upload.post("/read-in"), "10,000,000 bytes");
        assertEquals(413, preview("redfish", "x".repeat(10_000_000)).statusCode());
    }

    @Test
    void largestText_isPreviewedAndCanBeRecorded() {
        TicketNumber number = ticket();
        StringBuilder lines = new StringBuilder();
        for (int i = 0; i < 50_000; i++) {
            lines.append(i).append(" 40.25\n");
        }
        String unit = "°C";
        Response shown = form("series", lines.toString())
                .multiPart("unit", unit, "text/plain; charset=UTF-8")
                .multiPart("ticket", number.toString())
                .post("/read-in");
        assertEquals(200, shown.statusCode());
        assertTrue(shown.asString().contains("thin the series out for it"));
        // a browser sends a text area with two characters at each line's end
        Response answer = form("series", lines.toString().replace("\n", "\r\n"))
                .multiPart("unit", unit, "text/plain; charset=UTF-8")
                .multiPart("ticket", number.toString())
                .multiPart("seen", hidden(shown, "seen"))
                .multiPart("version", hidden(shown, "version"))
                .multiPart("take", "r0")
                .post("/read-in/record");
        assertEquals(303, answer.statusCode());
    }

    @Test
    void series_leadsToTheWarmUpCalculation() {
        Response shown = form("series", "t;T\n100;25.0\n120;48.5\n140;63.0\n160;71.5\n190;78.8")
                .multiPart("unit", "°C", "text/plain; charset=UTF-8")
                .multiPart("quantity", "temperature")
                .post("/read-in");
        Matcher link = Pattern.compile("href=\"(/bench/warm-up[^\"]*)\"").matcher(shown.asString());
        assertTrue(link.find(), shown::asString);
        Response bench = browser.get(link.group(1).replace("&amp;", "&"));
        assertEquals(200, bench.statusCode());
        assertTrue(bench.asString().contains("Settles at"));
    }

    private Response api(String path, String type, Object body) {
        RequestSpecification request =
                given().header("Authorization", "Bearer " + token).contentType(type);
        return (body instanceof byte[] bytes ? request.body(bytes) : request.body((String) body))
                .post("/api/read-in/" + path);
    }

    @Test
    void api_readsWithoutRecording() {
        Response answer = api("nvme-page?device=till", "application/octet-stream", Sectors.nvme());
        assertEquals(200, answer.statusCode());
        assertEquals("100", answer.path("readings.find { it.quantity == 'available spare' }.value"));
        assertEquals("WITHIN", answer.path("readings.find { it.quantity == 'available spare' }.verdict"));
        assertEquals("till", answer.path("readings[0].point"));
        assertEquals(false, answer.path("findings[0].driveFailure"));
        Response redfish = api(
                "redfish", "application/json", "{\"Name\": \"Inlet\", \"Reading\": 22.5, \"ReadingUnits\": \"Cel\"}");
        assertEquals("°C", redfish.path("readings[0].unit"));
        assertEquals("ups-mib", api("ups-mib", "text/plain", UPS).path("kind"));
    }

    @Test
    void api_refusesWithOffsetRowOrPath() {
        Response cut = api("nvme-page", "application/octet-stream", new byte[] {1, 2});
        assertEquals(422, cut.statusCode());
        assertEquals(
                "offset 2", cut.<List<Map<String, String>>>path("errors").get(0).get("field"));
        assertEquals(
                422,
                api("nvme-page", "application/octet-stream", new byte[10_000_000])
                        .statusCode());
        assertEquals(
                422,
                api("ups-mib", "application/octet-stream", new byte[] {(byte) 0xFF})
                        .statusCode());
        assertEquals(422, api("redfish", "application/json", "{").statusCode());
        assertEquals(404, api("no-kind", "text/plain", "x").statusCode());
        assertEquals(422, api("ups-mib", "text/plain", "").statusCode());
    }
}
