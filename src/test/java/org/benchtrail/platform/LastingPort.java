package org.benchtrail.platform;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.util.concurrent.ThreadLocalRandom;

/**
 * A port for what is killed and started again at the same address: below those that the system gives to outgoing connections, one of
 * which would take it meanwhile.
 */
public final class LastingPort {
    private static final int FIRST = 20_000;
    private static final int LAST = 31_000;

    private LastingPort() {}

    /** One that nobody uses at the moment. */
    public static int free() throws IOException {
        while (true) {
            int port = ThreadLocalRandom.current().nextInt(FIRST, LAST);
            try (ServerSocket socket = new ServerSocket(port, 1, InetAddress.getLoopbackAddress())) {
                return socket.getLocalPort();
            } catch (java.net.BindException taken) {
                // another one
            }
        }
    }
}
