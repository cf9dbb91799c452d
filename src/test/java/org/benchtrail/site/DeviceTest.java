package org.benchtrail.site;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.LuminanceSource;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.ReadingVerdict;
import org.benchtrail.core.site.DeviceCode;
import org.benchtrail.core.site.Nameplate;
import org.benchtrail.people.Browser;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.Forbidden;
import org.benchtrail.platform.Stale;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.Outcome;
import org.benchtrail.ticket.SiteReader;
import org.benchtrail.ticket.TicketActs;
import org.benchtrail.ticket.TicketQueries;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Devices: kept with their history, named by tickets, judged by their nameplate, found by their label. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class DeviceTest {
    private static final String PASSWORD = "a long enough password";
    private static final Actor TECH = new Actor("dev-tech", "Tess", Set.of(Role.TECHNICIAN));
    private static final Actor BOSS = new Actor("dev-boss", "Bo", Set.of(Role.SUPERVISOR));

    @Inject
    PeopleActs people;

    @Inject
    PlaceActs places;

    @Inject
    DeviceBook book;

    @Inject
    TicketActs tickets;

    @Inject
    TicketQueries look;

    @Inject
    SiteReader reader;

    private String label = "";

    @BeforeEach
    void settle() {
        people.ensureAccount(TECH.account(), TECH.name(), TECH.roles(), PASSWORD);
        people.ensureAccount(BOSS.account(), BOSS.name(), BOSS.roles(), PASSWORD);
        label = "Rig " + Long.toString(System.nanoTime(), 36);
    }

    private DeviceText device(String place, String nameplate, DeviceState state) {
        return new DeviceText(
                label, Category.POWER, "Bench rig", "SN 1", place, "USB", nameplate, "2030-01-31", state, "");
    }

    private Outcome open(String device, String place) {
        return tickets.open(
                new NewTicket(
                        "Rig is dark",
                        "",
                        Category.POWER,
                        device,
                        place,
                        "Rae",
                        "room 4",
                        Priority.Impact.ONE_PERSON,
                        Priority.Urgency.CAN_WAIT,
                        false),
                TECH);
    }

    private Outcome reads(Outcome before, String quantity, String value, String unit) {
        ReadingRecorded reading = new ReadingRecorded(quantity, value, unit, "back", "own display", null, null, "");
        return tickets.perform(before.number(), before.sheet().entries(), List.of(s -> reading), TECH);
    }

    @Test
    void technicianAdds_supervisorChanges_andEveryChangeIsKept() {
        assertEquals(1, book.add(device("", "", null), TECH).version());
        assertThrows(Invalid.class, () -> book.add(device("", "", null), TECH));
        assertThrows(Forbidden.class, () -> book.change(label, device("", "", DeviceState.SPARE), 1, TECH));
        book.change(
                label.toUpperCase(java.util.Locale.ROOT),
                device("", "Load: at most 1500 W", DeviceState.SPARE),
                1,
                BOSS);
        assertThrows(Stale.class, () -> book.change(label, device("", "", null), 1, BOSS));
        List<SiteChanges.Line> history = book.history(label, TECH);
        assertTrue(history.stream()
                .anyMatch(c -> c.field().equals("state")
                        && c.before().equals("in use")
                        && c.after().equals("spare")
                        && c.who().equals(BOSS.account())));
        assertTrue(history.stream()
                .anyMatch(c -> c.field().equals("label")
                        && c.before().isEmpty()
                        && c.who().equals(TECH.account())));
        assertThrows(
                RuntimeException.class,
                () -> TestDatabase.run("update site_change set who = 'nobody' where who = '" + BOSS.account() + "'"));
    }

    @Test
    void reading_isHeldAgainstTheNameplateOfItsDevice() {
        book.add(device("", "Input voltage: 100 to 240 V\nLoad: at most 1.5 kW", null), TECH);
        Outcome opened = open(" " + label.toLowerCase(java.util.Locale.ROOT), "Hall");
        assertEquals(label, opened.sheet().opened().device());
        Outcome load = reads(opened, "load", "1600", "W");
        ReadingRecorded judged =
                load.sheet().latest(ReadingRecorded.class).orElseThrow().fact();
        assertEquals("1500", judged.upper());
        assertEquals("nameplate of " + label, judged.limitSource());
        assertEquals(ReadingVerdict.OUTSIDE, judged.verdict());
        ReadingRecorded other = reads(load, "temperature", "50", "°C")
                .sheet()
                .latest(ReadingRecorded.class)
                .orElseThrow()
                .fact();
        assertEquals(ReadingVerdict.NOT_JUDGED, other.verdict());
    }

    @Test
    void limitsOfTheNameplate_areOfferedOnTheTicketOfTheDevice() {
        book.add(device("", "Load: at most 1.5 kW", null), TECH);
        TicketNumber number = open(label, "Hall").number();
        Browser tech = Browser.signedIn(TECH.account(), PASSWORD);
        String page = tech.get("/tickets/" + number).asString();
        assertTrue(page.contains("Load: at most 1.5 kW (nameplate of " + label + ")"), page);
        Map<String, String> typed =
                Map.of("version", "1", "limit.id", "nameplate-1", "reading.value", "1600 W", "reading.point", "back");
        assertEquals(303, tech.post("/tickets/" + number + "/evidence", typed).statusCode());
        ReadingRecorded held = look.ticket(number, TECH)
                .sheet()
                .latest(ReadingRecorded.class)
                .orElseThrow()
                .fact();
        assertEquals("Load", held.quantity());
        assertEquals("1500", held.upper());
        assertEquals(ReadingVerdict.OUTSIDE, held.verdict());
    }

    @Test
    void mains_areThoseOfThePlaceOfTheDevice() {
        String hall = "Hall " + label;
        places.addPlace(new PlaceActs.PlaceText(hall, "120", false), BOSS);
        book.add(device(hall, "", null), TECH);
        assertEquals("120", reader.mains(open(label, "Elsewhere").sheet()).orElseThrow());
        assertEquals("120", reader.mains(open("Some lamp", hall).sheet()).orElseThrow());
        assertTrue(reader.mains(open("Some lamp", "Elsewhere").sheet()).isEmpty());
    }

    /** The picture as a phone sees it: eight pixels for a module. */
    private static String read(String svg) throws Exception {
        Matcher box = Pattern.compile("viewBox=\"0 0 (\\d+) ").matcher(svg);
        assertTrue(box.find());
        int side = Integer.parseInt(box.group(1)) * 8;
        int[] pixels = new int[side * side];
        Arrays.fill(pixels, 0xffffff);
        Matcher module = Pattern.compile("M(\\d+) (\\d+)h(\\d+)v1h").matcher(svg);
        while (module.find()) {
            int wide = 8 * Integer.parseInt(module.group(3));
            for (int i = 0; i < wide * 8; i++) {
                int x = Integer.parseInt(module.group(1)) * 8 + i % wide;
                int y = Integer.parseInt(module.group(2)) * 8 + i / wide;
                pixels[y * side + x] = 0;
            }
        }
        LuminanceSource seen = new RGBLuminanceSource(side, side, pixels);
        return new QRCodeReader()
                .decode(new BinaryBitmap(new HybridBinarizer(seen)))
                .getText();
    }

    @Test
    void label_isReadBack_andLeadsToANewTicketOrTheOpenOne() throws Exception {
        DeviceView made = book.add(device("", "", null), TECH);
        Browser browser = Browser.signedIn(TECH.account(), PASSWORD);
        String page = browser.get("/device-labels?label=" + made.inAddress()).asString();
        Matcher svg = Pattern.compile("<svg [^>]*class=\"code\".*?</svg>", Pattern.DOTALL)
                .matcher(page);
        assertTrue(svg.find(), page);
        String address = read(svg.group());
        assertTrue(address.matches("https?://.+/d/" + made.code()), address);
        String path = "/d/" + made.code();
        assertTrue(browser.get(path).header("Location").endsWith("/new-ticket?of=" + made.inAddress()));
        Response form = browser.get("/new-ticket?of=" + made.inAddress());
        assertTrue(form.asString().contains("value=\"" + label + "\""), form::asString);
        Outcome opened = open(label, "Hall");
        assertTrue(browser.get(path).header("Location").endsWith("/tickets/" + opened.number()));
        int last = made.code().charAt(made.code().length() - 1) - '0';
        String misread = made.code().substring(0, made.code().length() - 1) + (last + 1) % 10;
        assertEquals(404, browser.get("/d/" + misread).statusCode());
    }

    @Test
    void page_showsTicketsReadingsWithAChart_andWhatWasChanged() {
        book.add(device("", "Load: at most 1500 W", null), TECH);
        Outcome first = reads(open(label, "Hall"), "load", "1400", "W");
        reads(first, "load", "1600", "W");
        Browser browser = Browser.signedIn(TECH.account(), PASSWORD);
        Response page = browser.get("/devices/" + book.device(label, TECH).inAddress());
        assertEquals(200, page.statusCode());
        String html = page.asString();
        assertTrue(html.contains("/tickets/" + first.number()), html);
        assertTrue(html.contains("class=\"chart\"") && html.contains("line limit"), html);
        assertTrue(html.contains("1600 W") && html.contains("outside"), html);
        assertTrue(!html.contains("Save the device"), "a technician changes no device");
        assertTrue(browser.get("/tickets/" + first.number()).asString().contains("href=\"/devices/"));
    }

    @Test
    void nameplate_isReadAndWritten_andFaultsAreNamed() {
        String typed = "Input voltage: 100 to 240 V\nLoad: at most 1500 W\n+12 V rail: at least 11.4 V";
        Nameplate nameplate = Nameplate.parse(typed, "nameplate");
        assertEquals(typed, nameplate.text());
        assertEquals(
                "11.4",
                nameplate.of("+12 v RAIL").orElseThrow().lower().orElseThrow().toPlainString());
        assertTrue(nameplate.of("-12 V rail").isEmpty());
        for (String wrong :
                List.of("Load 1500 W", "Load: 1500 W", ": at most 3 V", "Load: at most 3 flurbs", "Load: 5 to 3 W")) {
            assertThrows(Invalid.class, () -> Nameplate.parse(wrong, "nameplate"), wrong);
        }
    }

    @Test
    void everyWrongDigitOfACode_isSeen() {
        for (int number = 1; number < 3000; number += 7) {
            String code = DeviceCode.of(number);
            assertEquals(number, DeviceCode.read(code).getAsInt());
            for (int at = 0; at < code.length(); at++) {
                for (char digit = '0'; digit <= '9'; digit++) {
                    if (digit != code.charAt(at)) {
                        String wrong = code.substring(0, at) + digit + code.substring(at + 1);
                        assertTrue(DeviceCode.read(wrong).isEmpty(), wrong);
                    }
                }
            }
        }
    }

    @Test
    void team_hasMembersWhoWorkOnTickets() {
        PlaceActs.TeamView team =
                places.addTeam(new PlaceActs.TeamText("Team " + label, List.of(TECH.account()), false), BOSS);
        assertEquals(TECH.name(), team.names());
        assertThrows(
                Invalid.class,
                () -> places.changeTeam(
                        team.id(), new PlaceActs.TeamText(team.name(), List.of("nobody-here"), false), 1, BOSS));
        assertThrows(Forbidden.class, () -> places.addPlace(new PlaceActs.PlaceText("X", "", false), TECH));
    }
}
