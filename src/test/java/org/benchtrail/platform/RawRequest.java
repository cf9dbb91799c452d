package org.benchtrail.platform;

import io.restassured.RestAssured;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.Map;

/** A request byte for byte, also such as no client would send; answered by its status, 0 if the connection was closed on it. */
public record RawRequest(String method, String target, Map<String, String> headers, byte[] body) {
    private static final int LIMIT_MS = 10_000;

    public RawRequest(String method, String target, Map<String, String> headers, String body) {
        this(method, target, headers, body.getBytes(StandardCharsets.ISO_8859_1));
    }

    /** What came back. */
    public record Answer(int status, String head, String text) {}

    public Answer send() {
        StringBuilder head =
                new StringBuilder(method + " " + target + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n");
        headers.forEach(
                (name, value) -> head.append(name).append(": ").append(value).append("\r\n"));
        if (body.length > 0 && !headers.containsKey("Content-Length")) {
            head.append("Content-Length: ").append(body.length).append("\r\n");
        }
        head.append("\r\n");
        try (Socket socket = new Socket("localhost", RestAssured.port)) {
            socket.setSoTimeout(LIMIT_MS);
            socket.getOutputStream().write(head.toString().getBytes(StandardCharsets.ISO_8859_1));
            socket.getOutputStream().write(body);
            socket.getOutputStream().flush();
            return read(socket.getInputStream());
        } catch (IOException e) {
            throw new UncheckedIOException(method + " " + target, e);
        }
    }

    private static Answer read(InputStream in) throws IOException {
        String all = new String(in.readAllBytes(), StandardCharsets.UTF_8);
        if (!all.startsWith("HTTP/1.1 ")) {
            return new Answer(0, "", all);
        }
        int end = all.indexOf("\r\n\r\n");
        return new Answer(Integer.parseInt(all.substring(9, 12)), all.substring(0, end), all.substring(end + 4));
    }
}
