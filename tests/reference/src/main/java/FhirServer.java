import ca.uhn.fhir.batch2.jobs.config.Batch2JobsConfig;
import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.jpa.api.config.JpaStorageSettings;
import ca.uhn.fhir.jpa.api.config.ThreadPoolFactoryConfig;
import ca.uhn.fhir.jpa.api.dao.IFhirSystemDao;
import ca.uhn.fhir.jpa.batch2.JpaBatch2Config;
import ca.uhn.fhir.jpa.binary.api.IBinaryStorageSvc;
import ca.uhn.fhir.jpa.binstore.MemoryBinaryStorageSvcImpl;
import ca.uhn.fhir.jpa.config.HapiJpaConfig;
import ca.uhn.fhir.jpa.config.r4.JpaR4Config;
import ca.uhn.fhir.jpa.config.r5.JpaR5Config;
import ca.uhn.fhir.jpa.config.util.HapiEntityManagerFactoryUtil;
import ca.uhn.fhir.jpa.model.config.PartitionSettings;
import ca.uhn.fhir.jpa.model.config.SubscriptionSettings;
import ca.uhn.fhir.jpa.model.dialect.HapiFhirH2Dialect;
import ca.uhn.fhir.jpa.packages.IPackageInstallerSvc;
import ca.uhn.fhir.jpa.packages.PackageInstallationSpec;
import ca.uhn.fhir.jpa.provider.IJpaSystemProvider;
import ca.uhn.fhir.jpa.provider.JpaCapabilityStatementProvider;
import ca.uhn.fhir.jpa.provider.ValueSetOperationProvider;
import ca.uhn.fhir.jpa.search.DatabaseBackedPagingProvider;
import ca.uhn.fhir.jpa.search.HapiHSearchAnalysisConfigurers;
import ca.uhn.fhir.jpa.searchparam.config.NicknameServiceConfig;
import ca.uhn.fhir.jpa.subscription.channel.config.SubscriptionChannelConfig;
import ca.uhn.fhir.jpa.subscription.submit.config.SubscriptionSubmitterConfig;
import ca.uhn.fhir.jpa.validation.JpaValidationSupportChain;
import ca.uhn.fhir.rest.api.EncodingEnum;
import ca.uhn.fhir.rest.server.RestfulServer;
import ca.uhn.fhir.rest.server.interceptor.RequestValidatingInterceptor;
import ca.uhn.fhir.rest.server.provider.ResourceProviderFactory;
import ca.uhn.fhir.rest.server.util.ISearchParamRegistry;
import ca.uhn.fhir.validation.IInstanceValidatorModule;
import ca.uhn.fhir.validation.ResultSeverityEnum;
import jakarta.persistence.EntityManagerFactory;
import java.io.ByteArrayInputStream;
import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Properties;
import javax.sql.DataSource;
import org.apache.commons.dbcp2.BasicDataSource;
import org.eclipse.jetty.ee10.servlet.ServletContextHandler;
import org.eclipse.jetty.ee10.servlet.ServletHolder;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.hl7.fhir.common.hapi.validation.support.PrePopulatedValidationSupport;
import org.hl7.fhir.utilities.npm.NpmPackage;
import org.springframework.beans.factory.config.ConfigurableListableBeanFactory;
import org.springframework.context.ApplicationContext;
import org.springframework.context.annotation.AnnotationConfigApplicationContext;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;
import org.springframework.context.annotation.Primary;
import org.springframework.orm.jpa.JpaTransactionManager;
import org.springframework.orm.jpa.LocalContainerEntityManagerFactoryBean;
import org.springframework.transaction.annotation.EnableTransactionManagement;

/**
 * A FHIR server with an embedded database, on the loopback address only: it has no login.
 *
 * <p>System properties: {@code fhir} (R4 or R5), {@code port} (0: any free one), {@code db} (JDBC
 * URL of H2; in memory unless told), {@code validate} (true: a resource with an error gets status 422), {@code load} (folders of
 * definitions, joined by the path separator), {@code package} (a FHIR package, as .tgz, to install). Prints {@code READY <base URL>} once it answers, and
 * ends when its standard input does, so that it cannot outlive the process that started it.
 */
public final class FhirServer {
    private static final String LOOPBACK = "127.0.0.1";

    @Configuration
    @Import(JpaR4Config.class)
    static class StorageR4 extends Storage {}

    @Configuration
    @Import(JpaR5Config.class)
    static class StorageR5 extends Storage {}

    @EnableTransactionManagement
    @Import({
        HapiJpaConfig.class, JpaBatch2Config.class, Batch2JobsConfig.class,
        ThreadPoolFactoryConfig.class, NicknameServiceConfig.class,
        SubscriptionChannelConfig.class, SubscriptionSubmitterConfig.class
    })
    static class Storage {
        @Bean
        JpaStorageSettings storageSettings() {
            JpaStorageSettings settings = new JpaStorageSettings();
            settings.setResourceServerIdStrategy(JpaStorageSettings.IdStrategyEnum.UUID);
            // Concepts that are stored in the background get lost where the task runs before the commit.
            settings.setDeferIndexingForCodesystemsOfSize(100_000);
            return settings;
        }

        @Bean
        PartitionSettings partitionSettings() {
            return new PartitionSettings();
        }

        @Bean
        SubscriptionSettings subscriptionSettings() {
            return new SubscriptionSettings();
        }

        @Bean
        IBinaryStorageSvc binaryStorageSvc() {
            return new MemoryBinaryStorageSvcImpl();
        }

        @Bean(destroyMethod = "close")
        BasicDataSource dataSource() {
            BasicDataSource source = new BasicDataSource();
            source.setDriverClassName("org.h2.Driver");
            source.setUrl(System.getProperty("db", "jdbc:h2:mem:fhir;DB_CLOSE_DELAY=-1"));
            source.setUsername("sa");
            source.setPassword("");
            source.setMaxTotal(20);
            return source;
        }

        @Bean
        @Primary
        LocalContainerEntityManagerFactoryBean entityManagerFactory(
                ConfigurableListableBeanFactory beans, FhirContext context,
                JpaStorageSettings settings, DataSource source) {
            LocalContainerEntityManagerFactoryBean factory =
                HapiEntityManagerFactoryUtil.newEntityManagerFactory(beans, context, settings);
            factory.setPersistenceUnitName("fhir");
            factory.setDataSource(source);
            Properties hibernate = new Properties();
            hibernate.put("hibernate.dialect", HapiFhirH2Dialect.class.getName());
            hibernate.put("hibernate.hbm2ddl.auto", "update");
            hibernate.put("hibernate.search.enabled", String.valueOf(hasPackage()));
            if (hasPackage()) {
                // What is subsumed by what is answered from an index of the concepts.
                hibernate.put("hibernate.search.backend.type", "lucene");
                hibernate.put("hibernate.search.backend.directory.type", "local-heap");
                hibernate.put("hibernate.search.backend.lucene_version", "LUCENE_CURRENT");
                hibernate.put("hibernate.search.backend.analysis.configurer",
                    HapiHSearchAnalysisConfigurers.HapiLuceneAnalysisConfigurer.class.getName());
            }
            factory.setJpaProperties(hibernate);
            return factory;
        }

        @Bean
        @Primary
        JpaTransactionManager transactionManager(EntityManagerFactory factory) {
            return new JpaTransactionManager(factory);
        }
    }

    private FhirServer() {}

    private static boolean hasPackage() {
        return !System.getProperty("package", "").isEmpty();
    }

    public static void main(String[] args) {
        try {
            serve();
        } catch (Exception e) {
            // The threads of the storage would keep the process alive, and whoever waits for READY waiting.
            e.printStackTrace();
            System.exit(1);
        }
    }

    private static void serve() throws Exception {
        AnnotationConfigApplicationContext storage = new AnnotationConfigApplicationContext(
            "R5".equals(System.getProperty("fhir", "R4")) ? StorageR5.class : StorageR4.class);
        loadDefinitions(storage);
        installPackage(storage);
        Server server = new Server();
        ServerConnector connector = new ServerConnector(server);
        connector.setHost(LOOPBACK);
        connector.setPort(Integer.getInteger("port", 0));
        server.addConnector(connector);
        ServletContextHandler handler = new ServletContextHandler("/");
        ServletHolder servlet = new ServletHolder(fhirServlet(storage));
        servlet.setInitOrder(1);
        handler.addServlet(servlet, "/fhir/*");
        server.setHandler(handler);
        Runtime.getRuntime().addShutdownHook(new Thread(() -> stop(server, storage)));
        server.start();
        System.out.println("READY http://" + LOOPBACK + ":" + connector.getLocalPort() + "/fhir");
        System.in.transferTo(OutputStream.nullOutputStream());
        System.exit(0);
    }

    private static RestfulServer fhirServlet(ApplicationContext storage) {
        RestfulServer servlet = new RestfulServer(storage.getBean(FhirContext.class));
        servlet.registerProviders(storage.getBean(ResourceProviderFactory.class).createProviders());
        servlet.registerProvider(storage.getBean(IJpaSystemProvider.class));
        servlet.registerProvider(storage.getBean(ValueSetOperationProvider.class));
        servlet.setPagingProvider(storage.getBean(DatabaseBackedPagingProvider.class));
        servlet.setDefaultResponseEncoding(EncodingEnum.JSON);
        servlet.setServerConformanceProvider(new JpaCapabilityStatementProvider(
            servlet,
            storage.getBean(IFhirSystemDao.class),
            storage.getBean(JpaStorageSettings.class),
            storage.getBean(ISearchParamRegistry.class),
            storage.getBean(JpaValidationSupportChain.class)));
        if (Boolean.parseBoolean(System.getProperty("validate", "true"))) {
            RequestValidatingInterceptor validating = new RequestValidatingInterceptor();
            validating.addValidatorModule(storage.getBean(IInstanceValidatorModule.class));
            validating.setFailOnSeverity(ResultSeverityEnum.ERROR);
            // The header repeats every issue and soon passes what HTTP clients accept.
            validating.setAddResponseHeaderOnSeverity(null);
            servlet.registerInterceptor(validating);
        }
        return servlet;
    }

    private static void loadDefinitions(ApplicationContext storage) throws IOException {
        String folders = System.getProperty("load", "");
        if (folders.isEmpty()) return;
        FhirContext context = storage.getBean(FhirContext.class);
        PrePopulatedValidationSupport own = new PrePopulatedValidationSupport(context);
        for (String folder : folders.split(File.pathSeparator)) {
            int count = Definitions.load(context, Path.of(folder), own);
            System.out.println(count + " definitions from " + folder);
        }
        storage.getBean(JpaValidationSupportChain.class).addValidationSupport(own);
    }

    /** Installs a package as an operator does: its resources are stored, its codes and searches indexed. */
    private static void installPackage(ApplicationContext storage) throws IOException {
        if (!hasPackage()) return;
        byte[] contents = Files.readAllBytes(Path.of(System.getProperty("package")));
        NpmPackage read = NpmPackage.fromPackage(new ByteArrayInputStream(contents));
        PackageInstallationSpec wanted = new PackageInstallationSpec()
            .setName(read.name())
            .setVersion(read.version())
            .setPackageContents(contents)
            .setInstallMode(PackageInstallationSpec.InstallModeEnum.STORE_AND_INSTALL);
        var outcome = storage.getBean(IPackageInstallerSvc.class).install(wanted);
        System.out.println("installed " + read.name() + ": " + outcome.getResourcesInstalled());
        storage.getBean(ISearchParamRegistry.class).forceRefresh();
    }

    private static void stop(Server server, AnnotationConfigApplicationContext storage) {
        try {
            server.stop();
        } catch (Exception e) {
            System.err.println("the server did not stop cleanly: " + e);
        }
        storage.close();
    }
}
