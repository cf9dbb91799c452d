package org.benchtrail.packaged;

import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Map;
import java.util.zip.GZIPInputStream;

/** Takes what a server tells of its requests, as any collector of OTLP over HTTP does, and keeps the bytes as text. */
final class TraceCollector implements AutoCloseable {
    private static final Duration LIMIT = Duration.ofSeconds(20);

    private final HttpServer server;
    private final StringBuffer told = new StringBuffer();

    TraceCollector() throws IOException {
        server = HttpServer.create(new InetSocketAddress("127.0.0.1", 0), 0);
        server.createContext("/v1/traces", exchange -> {
            boolean packed = "gzip".equals(exchange.getRequestHeaders().getFirst("Content-Encoding"));
            try (InputStream body =
                    packed ? new GZIPInputStream(exchange.getRequestBody()) : exchange.getRequestBody()) {
                told.append(new String(body.readAllBytes(), StandardCharsets.ISO_8859_1));
            }
            exchange.sendResponseHeaders(200, -1);
            exchange.close();
        });
        server.start();
    }

    /** The settings of a server that tells it. */
    Map<String, String> environment() {
        return Map.of(
                "QUARKUS_OTEL_SDK_DISABLED",
                "false",
                "QUARKUS_OTEL_EXPORTER_OTLP_ENDPOINT",
                "http://127.0.0.1:" + server.getAddress().getPort(),
                "QUARKUS_DATASOURCE_JDBC_TELEMETRY_ENABLED",
                "true",
                "QUARKUS_OTEL_BSP_SCHEDULE_DELAY",
                "200ms");
    }

    /** All that was told, once this was. */
    String told(String awaited) throws InterruptedException {
        long end = System.nanoTime() + LIMIT.toNanos();
        while (told.indexOf(awaited) < 0 && System.nanoTime() < end) {
            Thread.sleep(50);
        }
        return told.toString();
    }

    @Override
    public void close() {
        server.stop(0);
    }
}
