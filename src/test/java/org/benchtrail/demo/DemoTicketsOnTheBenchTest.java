package org.benchtrail.demo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import org.benchtrail.bench.BenchRun;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.identify.BenchFigure;
import org.benchtrail.core.method.identify.BenchResultAttached;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.ReadingVerdict;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.TestDatabase;
import org.benchtrail.ticket.QueueFilter;
import org.benchtrail.ticket.TicketListQueries;
import org.benchtrail.ticket.TicketQueries;
import org.benchtrail.ticket.bench.BenchActs;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** Each of the five demo tickets, worked with the bench. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class DemoTicketsOnTheBenchTest {
    @Inject
    Scenarios scenarios;

    @Inject
    BenchActs bench;

    @Inject
    TicketListQueries queue;

    @Inject
    TicketQueries look;

    @Inject
    PeopleActs accounts;

    private final Actor sam = new Actor("demo-sam", "Sam", Set.of(Role.SUPERVISOR));

    @BeforeAll
    void people() {
        accounts.ensureAccount("ines", "Ines Harrow", Set.of(Role.TECHNICIAN), Scenarios.DEMO_PASSWORD);
        accounts.ensureAccount("tomasz", "Tomasz Birk", Set.of(Role.TRAINEE), Scenarios.DEMO_PASSWORD);
        accounts.ensureAccount("ruth", "Ruth Calloway", Set.of(Role.TECHNICIAN, Role.MENTOR), Scenarios.DEMO_PASSWORD);
        accounts.ensureAccount("demo-sam", "Sam", sam.roles(), Scenarios.DEMO_PASSWORD);
    }

    /** A copy of its own, under its own title, so that no other test has worked on it. */
    private TicketNumber loaded(String scenario) throws IOException {
        String text = Files.readString(Path.of("demo-scenarios", scenario + ".yaml"), StandardCharsets.UTF_8);
        String own = "On the bench " + scenario;
        scenarios.load(
                "bench-" + scenario + ".yaml",
                text.replace("name: " + scenario, "name: bench-" + scenario)
                        .replaceFirst("title: .*", "title: " + own));
        QueueFilter filter = QueueFilter.of(Standing.OPEN).text(own).lines(50);
        return queue.queue(filter, sam).tickets().stream()
                .filter(t -> t.title().equals(own))
                .map(t -> TicketNumber.parse(t.number()))
                .findFirst()
                .orElseThrow();
    }

    private BenchResultAttached attached(TicketNumber ticket, String calculation, String json) {
        try {
            BenchRun run = BenchRun.ofJson(calculation, new ObjectMapper().readTree(json));
            assertTrue(!bench.attach(ticket, null, run, null, sam).refused());
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
        return sheet(ticket).latest(BenchResultAttached.class).orElseThrow().fact();
    }

    private JobSheet sheet(TicketNumber ticket) {
        return look.ticket(ticket, sam).sheet();
    }

    private static double figure(BenchResultAttached result, String name) {
        return result.figures().stream()
                .filter(f -> f.name().equals(name))
                .map(BenchFigure::value)
                .mapToDouble(Double::parseDouble)
                .findFirst()
                .orElseThrow(() -> new AssertionError(name + " in " + result.figures()));
    }

    @Test
    void upsOffice_outletsAndRuntime() throws IOException {
        TicketNumber ticket = loaded("ups-office");
        BenchResultAttached outlets = attached(
                ticket,
                "ups-outlets",
                "{\"ratedWatts\":600,\"ratedVa\":1000,\"batteryOutlets\":4,\"surgeOutlets\":4,\"feed\":\"EXTENSION_CORD_OR_STRIP\",\"loads\":["
                        + "{\"name\":\"Router\",\"kind\":\"ROUTER\",\"watts\":12,\"mustSurvive\":true},"
                        + "{\"name\":\"Switch\",\"kind\":\"SWITCH\",\"watts\":25,\"mustSurvive\":true},"
                        + "{\"name\":\"Server\",\"kind\":\"SERVER\",\"watts\":100,\"mustSurvive\":true},"
                        + "{\"name\":\"Laser printer\",\"kind\":\"LASER_PRINTER\",\"watts\":480,\"mustSurvive\":false}]}");
        assertEquals("BAD", outlets.level().name(), outlets::reason);
        BenchResultAttached runtime = attached(
                ticket,
                "ups-runtime",
                "{\"blocks\":2,\"blockVolts\":12,\"ampHours\":9,\"ratedHours\":20,\"exponent\":1.15,\"health\":85,\"efficiency\":90,\"usable\":100,\"watts\":137,\"shutdownMinutes\":5}");
        assertEquals("long enough for an orderly shutdown", runtime.verdict(), runtime::reason);
    }

    @Test
    void driveWarning_healthSaysBackUpFirst() throws IOException {
        TicketNumber ticket = loaded("drive-warning");
        BenchResultAttached health = attached(
                ticket,
                "drive-health",
                "{\"form\":\"ATA_ROWS\",\"table\":\"5 8 8 10 212\\n9 82 82 0 15890\\n197 100 100 0 4\\n198 100 100 0 0\",\"thresholds\":\"\",\"followed\":5,\"earlier\":[]}");
        assertEquals("failing", health.verdict(), health::reason);
        assertTrue(health.reason().startsWith("Back up first."), health::reason);
        assertTrue(sheet(ticket).driveFailure().isPresent());
    }

    @Test
    void arrayMember_sasForSasFits_andSataDoesNot() throws IOException {
        TicketNumber ticket = loaded("array-member");
        String input =
                "{\"bay\":\"SAS\",\"bayForm\":\"INCH_3_5\",\"bayHeight\":26.1,\"carrier\":false,\"bayPower\":25,\"member\":true,"
                        + "\"oldInterface\":\"SAS\",\"oldSectors\":\"F512E\",\"oldMedia\":\"DISK_CMR\",\"oldSpeed\":7200,\"oldBlocks\":7814037168,"
                        + "\"newInterface\":\"%s\",\"newForm\":\"INCH_3_5\",\"newHeight\":26.1,\"newSectors\":\"F512E\",\"newMedia\":\"DISK_CMR\",\"newSpeed\":7200,"
                        + "\"newLabel\":4000,\"newPower\":11,\"siteList\":\"LISTED\"}";
        assertEquals(
                "fits",
                attached(ticket, "drive-fit", String.format(input, "SAS")).verdict());
        BenchResultAttached sata = attached(ticket, "drive-fit", String.format(input, "SATA"));
        assertEquals("does not fit", sata.verdict());
        for (String rule :
                new String[] {"interface", "mixing inside an array", "form factor", "sector format", "blocks"}) {
            assertTrue(sata.reason().contains(rule), rule + " in " + sata.reason());
        }
    }

    /** Samples of T(t) = 110 - 85 e^(-t / 60 s): reaches 100 °C after 60 s x ln(85 / 10) = 128.4 s, computed by hand. */
    @Test
    void hotDesktop_isOutside_withItsTimeToTrip() throws IOException {
        TicketNumber ticket = loaded("hot-desktop");
        ReadingRecorded reading =
                sheet(ticket).latest(ReadingRecorded.class).orElseThrow().fact();
        assertEquals(ReadingVerdict.OUTSIDE, reading.verdict());
        StringBuilder samples = new StringBuilder();
        for (int t = 0; t <= 120; t += 20) {
            double temperature = Math.rint(1000 * (110 - 85 * Math.exp(-t / 60.0))) / 1000;
            samples.append(t == 0 ? "" : ",")
                    .append("{\"seconds\":")
                    .append(t)
                    .append(",\"temperature\":")
                    .append(temperature)
                    .append('}');
        }
        BenchResultAttached warmUp =
                attached(ticket, "warm-up", "{\"samples\":[" + samples + "],\"start\":null,\"trip\":100}");
        assertEquals("will reach the trip point", warmUp.verdict(), warmUp::reason);
        assertEquals(60 * Math.log(8.5), figure(warmUp, "Time to the trip point"), 0.2);
    }

    /**
     * Power goes with clock and with the square of the voltage: (4.5 / 3.6) x (1.38 / 1.20)^2 = 1.653; above the air of 24 °C
     * the rise at the default clock is the present one divided by that: 24 + (98 - 24) / 1.653 = 68.8 °C, computed by hand.
     */
    @Test
    void fastClock_isHotterThanRated_withTheTemperatureAtTheDefault() throws IOException {
        TicketNumber ticket = loaded("fast-clock");
        BenchResultAttached heat = attached(
                ticket,
                "clock-heat",
                "{\"ratedWatts\":65,\"ratedClock\":3.6,\"clock\":4.5,\"ratedVolts\":1.2,\"volts\":1.38,\"chip\":98,\"ambient\":24}");
        assertEquals("hotter than rated", heat.verdict(), heat::reason);
        double ratio = 4.5 / 3.6 * Math.pow(1.38 / 1.2, 2);
        assertTrue(
                heat.figures().stream()
                        .filter(f -> f.unit().equals("\u00b0C"))
                        .anyMatch(f -> Math.abs(Double.parseDouble(f.value()) - (24 + 74 / ratio)) < 0.1),
                () -> heat.figures().toString());
    }
}
