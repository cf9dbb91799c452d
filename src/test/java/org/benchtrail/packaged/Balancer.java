package org.benchtrail.packaged;

import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.platform.LastingPort;

/** The balancer of the recipe, by its own file, with the addresses of this test in place of a shop's and without TLS. */
final class Balancer implements AutoCloseable {
    private static final Path RECIPE = Path.of("src/main/deploy/haproxy.cfg");

    private final Process process;
    private final URI address;

    private Balancer(Process process, URI address) {
        this.process = process;
        this.address = address;
    }

    /** The program, if this machine has it. */
    static Optional<Path> program() {
        return Stream.of("/usr/sbin/haproxy", "/usr/local/sbin/haproxy", "/usr/bin/haproxy")
                .map(Path::of)
                .filter(Files::isExecutable)
                .findFirst();
    }

    static Balancer start(Path program, Path folder, List<RunningServer> servers) throws IOException {
        int port = LastingPort.free();
        String recipe = Files.readString(RECIPE);
        String here = recipe.replaceFirst("bind .*", "bind 127.0.0.1:" + port)
                .replaceAll("(?m)^ *server second .*\\n", "")
                .replaceAll("(?m)^( *)server first .*", Matcher.quoteReplacement(lines(servers)));
        if (here.contains("192.0.2.") || here.contains(":443")) {
            throw new AssertionError("an address of the recipe is left:\n" + here);
        }
        Path file = folder.resolveSibling("haproxy.cfg");
        Files.writeString(file, here, StandardCharsets.UTF_8);
        Process process = new ProcessBuilder(List.of(program.toString(), "-db", "-f", file.toString()))
                .redirectErrorStream(true)
                .redirectOutput(folder.resolveSibling("haproxy.log").toFile())
                .start();
        return new Balancer(process, URI.create("http://127.0.0.1:" + port));
    }

    private static String lines(List<RunningServer> servers) {
        return servers.stream()
                .map(server -> "    server at" + server.address().getPort() + " "
                        + server.address().getAuthority() + " port " + server.managementPort())
                .collect(Collectors.joining("\n"));
    }

    URI address() {
        return address;
    }

    @Override
    public void close() throws IOException, InterruptedException {
        process.destroy();
        process.waitFor();
    }
}
