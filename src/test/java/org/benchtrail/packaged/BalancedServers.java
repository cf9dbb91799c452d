package org.benchtrail.packaged;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.platform.LastingPort;
import org.benchtrail.platform.database.ReplicatedDatabase;

/** The README's recipe as processes of this machine: so many servers behind its balancer, on a database that another one follows. */
final class BalancedServers implements AutoCloseable {
    private final String name;
    private final ReplicatedDatabase database;
    private final List<RunningServer> servers = new ArrayList<>();
    private Optional<Balancer> balancer = Optional.empty();

    private BalancedServers(String name, ReplicatedDatabase database) {
        this.name = name;
        this.database = database;
    }

    /** Returns when all answer; leaves the test out, and says so, where the balancer's program is missing. */
    static BalancedServers start(String name, int count) throws Exception {
        Optional<Path> haproxy = Balancer.program();
        if (haproxy.isEmpty()) {
            System.out.println("The test " + name + " is left out: this machine has no haproxy");
        }
        assumeTrue(haproxy.isPresent(), "this machine has no haproxy");
        BalancedServers all = new BalancedServers(
                name,
                ReplicatedDatabase.start(
                        PackagedJar.folder(name + "-database-1"), PackagedJar.folder(name + "-database-2")));
        boolean started = false;
        try {
            all.startServers(count);
            all.balancer = Optional.of(Balancer.start(haproxy.get(), all.folder(0), all.servers));
            started = true;
        } finally {
            if (!started) {
                all.close();
            }
        }
        return all;
    }

    /** The first migrates and brings the demo; from then on none knows the owner. */
    private void startServers(int count) throws IOException, InterruptedException {
        Map<String, String> owners = database.environment();
        for (int i = 0; i < count; i++) {
            PackagedJar.folder(name + "-server-" + i);
            servers.add(start(
                    PackagedJar.built(),
                    LastingPort.free(),
                    i,
                    i == 0 ? owners : Map.of(),
                    i == 0 ? List.of("benchtrail.demo=true") : List.of()));
        }
    }

    private RunningServer start(Path jar, int port, int which, Map<String, String> more, List<String> properties)
            throws IOException, InterruptedException {
        Map<String, String> environment = database.environment();
        environment.keySet().removeIf(variable -> variable.startsWith("BENCHTRAIL_OWNER"));
        environment.put("BENCHTRAIL_DATA", folder(which).toString());
        environment.putAll(more);
        return RunningServer.start(jar, port, folder(which), environment, properties);
    }

    private Path folder(int which) {
        return Path.of("target", "packaged", name + "-server-" + which).toAbsolutePath();
    }

    /** Starts one that has ended at its address. */
    void startAgain(int which) throws IOException, InterruptedException {
        startAgain(which, PackagedJar.built(), Map.of());
    }

    /**
     * @param jar the program, of this build or of another
     * @param more variables, beside the usual ones
     */
    void startAgain(int which, Path jar, Map<String, String> more) throws IOException, InterruptedException {
        servers.set(which, start(jar, servers.get(which).address().getPort(), which, more, List.of()));
    }

    /** Starts whatever an earlier test has ended. */
    void startWhatHasEnded() throws IOException, InterruptedException {
        for (int i = 0; i < servers.size(); i++) {
            if (!servers.get(i).alive()) {
                startAgain(i);
            }
        }
    }

    int count() {
        return servers.size();
    }

    RunningServer server(int which) {
        return servers.get(which);
    }

    ReplicatedDatabase database() {
        return database;
    }

    /** Somebody who comes by the balancer, which has found its servers by then. */
    Visitor visitor() throws InterruptedException {
        Visitor visitor = new Visitor(balancer.orElseThrow().address());
        visitor.again("/sign-in");
        return visitor;
    }

    /** A program that comes by the balancer, with a token. */
    Visitor program() throws IOException, InterruptedException {
        Visitor ruth = visitor();
        ruth.signIn("ruth", "benchtrail-demo");
        return Visitor.withToken(balancer.orElseThrow().address(), ruth.makeToken("benchtrail-demo"));
    }

    String address() {
        return balancer.orElseThrow().address().toString();
    }

    @Override
    public void close() throws Exception {
        if (balancer.isPresent()) {
            balancer.get().close();
        }
        for (RunningServer server : servers) {
            server.close();
        }
        database.close();
    }
}
