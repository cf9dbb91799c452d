package org.benchtrail.seal.offline;

import java.io.IOException;
import java.net.ProtocolFamily;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.channels.DatagramChannel;
import java.nio.channels.Pipe;
import java.nio.channels.ServerSocketChannel;
import java.nio.channels.SocketChannel;
import java.nio.channels.spi.AbstractSelector;
import java.nio.channels.spi.SelectorProvider;
import org.benchtrail.Benchtrail;

/** A process in which every socket is refused; it is told by what the process ends with. */
public final class NoNetwork {
    static final int OPENED = 97;
    static final int NOT_REFUSED = 98;

    private NoNetwork() {}

    /** Ends the process where a socket is asked for, whatever catches what it throws. */
    private static <T> T refuse() {
        new IllegalStateException("a socket was asked for").printStackTrace();
        Runtime.getRuntime().halt(OPENED);
        throw new IllegalStateException("halted");
    }

    /** Of channels: named by {@code java.nio.channels.spi.SelectorProvider}. */
    public static final class Refusing extends SelectorProvider {
        @Override
        public DatagramChannel openDatagramChannel() {
            return refuse();
        }

        @Override
        public DatagramChannel openDatagramChannel(ProtocolFamily family) {
            return refuse();
        }

        @Override
        public Pipe openPipe() {
            return refuse();
        }

        @Override
        public AbstractSelector openSelector() {
            return refuse();
        }

        @Override
        public ServerSocketChannel openServerSocketChannel() {
            return refuse();
        }

        @Override
        public SocketChannel openSocketChannel() {
            return refuse();
        }
    }

    /** @param words of the program; {@code socket} and {@code channel} alone try whether one is refused */
    public static void main(String[] words) throws IOException {
        Socket.setSocketImplFactory(NoNetwork::refuse);
        ServerSocket.setSocketFactory(NoNetwork::refuse);
        if (words[0].equals("socket")) {
            new Socket().connect(new java.net.InetSocketAddress("127.0.0.1", 1));
        } else if (words[0].equals("channel")) {
            SocketChannel.open().close();
        } else {
            Benchtrail.main(words);
        }
        System.exit(NOT_REFUSED);
    }
}
