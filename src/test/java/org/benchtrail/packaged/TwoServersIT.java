package org.benchtrail.packaged;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.benchtrail.browser.TicketInTwoHalves;
import org.junit.jupiter.api.Test;
import org.opentest4j.TestAbortedException;

/**
 * The README's recipe for a shop that may not stand still: two servers behind a balancer, on a database that another one follows. One
 * server is killed, then the first database; nothing that was acknowledged is lost, nothing is there twice, and who is signed in
 * stays so; a ticket that is worked in a browser meanwhile goes on. {@link FaultCampaign} does the same again and again.
 */
class TwoServersIT {
    private static final int ACTS = Integer.getInteger("two.acts", 20);
    private static final long LONGEST_MS = 30_000;

    @Test
    void serverAndDatabaseKilled_nothingAcknowledgedIsLost() throws Exception {
        try (BalancedServers servers = BalancedServers.start("two", 2)) {
            work(servers);
        }
    }

    private static void work(BalancedServers servers) throws Exception {
        assertTrue(servers.server(1).health().contains("\"acts wait for it\": \"yes\""));
        Visitor omar = servers.visitor();
        assertEquals(303, omar.signIn("omar", "benchtrail-demo"));
        Visitor program = servers.program();
        Optional<TicketInTwoHalves> ticket = inABrowser(servers);
        try (Load load = new Load(program, 1)) {
            load.start();
            load.more(ACTS);
            ticket.ifPresent(TicketInTwoHalves::first);
            servers.server(0).kill();
            long serverGone = load.more(ACTS);
            ticket.ifPresent(TicketInTwoHalves::second);
            assertEquals(200, omar.again("/queue"), "still signed in");
            servers.database().failOver();
            long databaseGone = load.more(ACTS);
            assertEquals(200, omar.again("/queue"), "still signed in");
            load.close();
            System.out.printf(
                    "%d acts acknowledged, %d sent again; longest: %d ms as a server was killed, %d ms as the database was%n",
                    load.size(), load.again(), serverGone, databaseGone);
            assertTrue(serverGone < LONGEST_MS && databaseGone < LONGEST_MS);
            assertEquals(
                    List.of(),
                    load.answers().keySet().stream()
                            .filter(told -> told.contains("503 the balancer"))
                            .toList(),
                    "while the database is away a server says so, not the balancer");
            load.found(program).requireWhole();
        }
        ticket.ifPresent(TicketInTwoHalves::close);
        assertTrue(servers.server(1).health().contains("\"acts wait for it\": \"no\""));
        assertEquals(List.of("f"), servers.database().ask("select pg_is_in_recovery()"));
    }

    /** A ticket that is worked by the balancer's address; where there is no Chromium it is left out, which is said there. */
    private static Optional<TicketInTwoHalves> inABrowser(BalancedServers servers) {
        try {
            return Optional.of(new TicketInTwoHalves(servers.address()));
        } catch (TestAbortedException noChromium) {
            return Optional.empty();
        }
    }
}
